-- A database for a group of kitchens, with two roles. Run once as the server's administrator, with passwords of your own:
--   psql -v owner="'…'" -v service="'…'" -f postgresql.sql
-- `gambrel_owner` holds the tables and is used for upgrades alone; `gambrel` is what the service signs in as: it adds to
-- the record and changes what may change, and can neither alter a table nor take anything out of the chain. After this,
-- and after each new version of the program:
--   gambrel upgrade --database postgres://gambrel_owner@…/gambrel --service-role gambrel
-- Leave fsync, full_page_writes and synchronous_commit on: what was answered must survive power loss.
CREATE ROLE gambrel_owner LOGIN PASSWORD :owner;
CREATE ROLE gambrel LOGIN PASSWORD :service;
CREATE DATABASE gambrel OWNER gambrel_owner ENCODING 'UTF8';
REVOKE ALL ON DATABASE gambrel FROM PUBLIC;
GRANT CONNECT ON DATABASE gambrel TO gambrel;
