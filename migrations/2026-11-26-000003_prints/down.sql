DROP TABLE printer_leases;
DROP TABLE print_events;
DROP TABLE print_runs;
DROP TABLE prints;
DROP TABLE kept_texts;
