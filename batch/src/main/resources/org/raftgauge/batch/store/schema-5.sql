-- How far the rows of a pair of cameras lie apart, px.
ALTER TABLE photos ADD COLUMN pair_rows_px REAL;
ALTER TABLE earlier_photos ADD COLUMN pair_rows_px REAL;
