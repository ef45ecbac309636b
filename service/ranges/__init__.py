"""Size ranges: one garment over many sizes, in other processes like the orders of a batch."""
