list-comma = { $first }, { $last }
list-and = { $first } and { $last }
list-or = { $first } or { $last }
list-semicolon = { $first }; { $rest }
