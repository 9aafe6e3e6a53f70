-- Sites whose canopy height is from a ruler, separated by semicolons; all others are from the crop's model.
ALTER TABLE rafts ADD COLUMN ruler_sites TEXT NOT NULL DEFAULT '';
-- What was mended or left out in placing the board, a line each.
ALTER TABLE rafts ADD COLUMN notes TEXT NOT NULL DEFAULT '';
