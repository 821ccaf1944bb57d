-- A database for a group of kitchens. Run once as the server's administrator, with a password of your own:
--   psql -v password="'…'" -f postgresql.sql
-- Leave fsync, full_page_writes and synchronous_commit on: what was answered must survive power loss.
CREATE ROLE gambrel LOGIN PASSWORD :password;
CREATE DATABASE gambrel OWNER gambrel ENCODING 'UTF8';
