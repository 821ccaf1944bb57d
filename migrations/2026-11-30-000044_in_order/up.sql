-- Whether anything happened later than what is entered now.
CREATE INDEX deeds_by_moment ON deeds (at);
