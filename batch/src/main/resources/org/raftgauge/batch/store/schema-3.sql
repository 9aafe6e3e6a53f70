-- What a photo says of its station: a fixed camera's shift, px of the station's photos, and turn.
ALTER TABLE photos ADD COLUMN shift_right_px REAL;
ALTER TABLE photos ADD COLUMN shift_down_px REAL;
ALTER TABLE photos ADD COLUMN turn_deg REAL;
-- Blur of board edges, px, in all and in nine parts of the picture, separated by semicolons.
ALTER TABLE photos ADD COLUMN edge_blur_px REAL;
ALTER TABLE photos ADD COLUMN edge_blur_cells_px TEXT NOT NULL DEFAULT '';
ALTER TABLE photos ADD COLUMN haze_fraction REAL;
-- The light over the picture, as white boards show it.
ALTER TABLE photos ADD COLUMN board_light REAL;
ALTER TABLE photos ADD COLUMN light_across_ln REAL;
ALTER TABLE photos ADD COLUMN light_down_ln REAL;
ALTER TABLE photos ADD COLUMN vignetting_fraction REAL;
