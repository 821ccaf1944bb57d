DROP INDEX sources_by_supplier;
DROP INDEX moves_by_place;
DROP INDEX clean_downs;
DROP INDEX deeds_under_way;
DROP INDEX deeds_by_place;
