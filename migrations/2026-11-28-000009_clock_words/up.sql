-- What managers said of the clock: that it is right now, whatever was recorded with a wrong one before.
CREATE TABLE clock_words (
    id INTEGER PRIMARY KEY,
    at TIMESTAMP NOT NULL,
    ahead_until TIMESTAMP,
    person TEXT NOT NULL,
    why TEXT NOT NULL
);
