DROP TABLE clock_words;
