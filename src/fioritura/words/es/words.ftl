list-comma = { $first }, { $last }
list-and = { $first } y { $last }
list-or = { $first } o { $last }
list-semicolon = { $first }; { $rest }
