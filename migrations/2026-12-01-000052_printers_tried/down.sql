ALTER TABLE printer_leases DROP COLUMN tried_at;
