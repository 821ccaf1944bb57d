DROP TABLE thinnings;
DROP TABLE paper_parts;
DROP TABLE papers;
