DROP TABLE conditions;
