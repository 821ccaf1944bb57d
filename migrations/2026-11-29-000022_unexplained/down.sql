DROP INDEX unexplained_by_lot;
