"""What the garments share: the draft sheet, darts, waistbands, trueing, constants with sources."""
