DROP TABLE wrong_labels;
DROP TABLE label_truths;
ALTER TABLE packs DROP COLUMN printed;
DROP INDEX prints_by_pack;
ALTER TABLE prints DROP COLUMN net_mg;
ALTER TABLE prints DROP COLUMN claims_id;
