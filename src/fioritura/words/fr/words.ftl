list-and = { $first } et { $last }
list-or = { $first } ou { $last }
