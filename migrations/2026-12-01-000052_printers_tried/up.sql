-- When a test label came out last: a printer that only stands in the list is none yet.
ALTER TABLE printer_leases ADD COLUMN tried_at TIMESTAMP;
