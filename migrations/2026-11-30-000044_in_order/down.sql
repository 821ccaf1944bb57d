DROP INDEX deeds_by_moment;
