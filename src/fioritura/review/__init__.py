"""A take reviewed for teacher and student: pictures, pages and files made of what the ear reports.

`review_take` (`fioritura.review.take_review`) listens to a recording and gives a `Review`: notes, named ornaments, the
report, praise and advice. `pictures` (`fioritura.review.pictures`) draws it as SVG by name, `review_body` and
`review_page` (`fioritura.review.page`) set it as HTML, `review_document` (`fioritura.review.document`) for print.
"""
