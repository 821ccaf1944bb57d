DROP TABLE chain_due;
DROP TABLE chain;
