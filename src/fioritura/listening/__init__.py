"""The ear: from a recording to notes, named ornaments, and a report on what was played.

The whole of it in one call, with pictures and pages, is `fioritura.review.take_review.review_take`.
"""
