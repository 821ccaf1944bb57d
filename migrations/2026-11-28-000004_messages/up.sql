-- What a link says is kept as a message (its key and arguments), and what it rests on as rows or as a
-- message; both as JSON. Links of the time before have neither: their sentences stay in says, rule and
-- source, which are empty for all others.
ALTER TABLE reasons ADD COLUMN said TEXT;
ALTER TABLE reasons ADD COLUMN basis TEXT;

-- The list of animals, newest kill first, page by page.
CREATE INDEX animals_by_kill ON animals (killed_on, id);
