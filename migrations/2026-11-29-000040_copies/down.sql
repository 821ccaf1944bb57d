DROP TABLE copies;
DROP TABLE record_leases;
DROP TABLE identities;
