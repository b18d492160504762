list-comma = { $first }, { $last }
list-and = { $first } and { $last }
list-or = { $first } or { $last }
list-semicolon = { $first }; { $rest }
no-such-language = No language “{ $given }”: choose { LIST($known, "or") }.

# Cautions, in one place for every sheet and screen.

care-hearing = Hearing: set the volume low before you press play, in headphones most of all. An hour of loud playing in a small room wants ear protection and a pause.
    .short = Set the volume low before you press play, in headphones most of all; then raise it.
care-pain = Pain: ornaments are small, quick and repeated. Rest after ten minutes on the same figure, shake out hands and jaw, and stop when it hurts; pain that stays belongs to a doctor.
    .short = Rest after ten minutes on the same figure, and stop when it hurts.
care-rights = Rights: an arrangement of a tune in copyright needs permission to make and to share. Local law decides; ask before you copy or post it.
    .short = An arrangement of a tune in copyright needs permission to share: local law decides.
