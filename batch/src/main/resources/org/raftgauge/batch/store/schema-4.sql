-- The height of a plant as a second camera saw it: stereo, depth, or '' where the height is from model or ruler.
ALTER TABLE sites ADD COLUMN height_seen_by TEXT NOT NULL DEFAULT '';
ALTER TABLE sites ADD COLUMN height_p95_mm REAL;
ALTER TABLE sites ADD COLUMN canopy_volume_cm3 REAL;
ALTER TABLE sites ADD COLUMN height_seen_fraction REAL;
