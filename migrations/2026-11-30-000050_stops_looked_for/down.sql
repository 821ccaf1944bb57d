UPDATE lots SET stopped = TRUE WHERE EXISTS (SELECT 1 FROM stops WHERE stops.lot_id = lots.id);
