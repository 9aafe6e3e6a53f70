-- Sites whose canopy height is from a ruler, names separated by ';'; all others are from the crop's model.
ALTER TABLE rafts ADD COLUMN ruler_sites TEXT NOT NULL DEFAULT '';
