"""The sun by pvlib: positions, clear sky, panels, cells and power at twelve places, and a typical year in months.

Of the typical-year files that pvlib ships only means by month and hour are written, nothing of the files themselves.
"""

import importlib.resources
import json
import sys

import numpy as np
import pandas as pd
from pvlib import atmosphere, clearsky, iotools, irradiance, pvsystem, solarposition, temperature

# UTC, latitude, longitude, altitude, air in C, turbidity, tilt, azimuth of the panel, wind, fixing.
CASES = [
    ("1950-01-03T10:20:00", 51.5, -0.1, 10, 4, 3.5, 60, 180, 3, "Open"),
    ("1967-05-14T02:40:00", 35.7, 139.7, 40, 18, 4.0, 20, 150, 2, "Close"),
    ("1987-08-30T15:00:00", 0.0, -78.5, 2800, 15, 2.5, 10, 0, 1, "Glued"),
    ("1999-12-22T15:30:00", 64.1, -51.7, 5, -9, 2.0, 85, 200, 5, "Open"),
    ("2003-10-17T19:30:30", 39.742476, -105.1786, 1830.14, 11, 2.2, 30, 170, 1, "Close"),
    ("2012-02-29T05:15:00", -33.9, 151.2, 30, 26, 3.0, 35, 0, 4, "Close"),
    ("2020-06-20T22:45:00", 69.6, 19.0, 100, 8, 2.4, 90, 340, 2, "Open"),
    ("2026-03-20T20:00:00", 44.62, -124.05, 0, 12, 3.0, 30, 180, 1, "Glued"),
    ("2027-06-21T12:10:00", 47.6, 8.0, 450, 24, 3.4, 0, 180, 1, "Glued"),
    ("2033-09-09T21:50:00", -54.8, -68.3, 20, 5, 2.6, 50, 310, 8, "Open"),
    ("2041-04-04T09:05:00", 28.3, 56.0, 600, 33, 5.5, 15, 120, 2, "Close"),
    ("2049-11-11T23:30:00", -41.3, 174.8, 15, 16, 2.9, 45, 30, 6, "Glued"),
]
FIXINGS = {"Open": "open_rack_glass_polymer", "Close": "close_mount_glass_glass", "Glued": "insulated_back_glass_polymer"}
RATED_W, PER_C, ALBEDO = 120.0, -0.0038, 0.25


def number(value, digits=4):
    return round(float(value), digits) + 0.0


def place(case):
    utc, latitude, longitude, altitude, air, turbidity, tilt, facing, wind, fixing = case
    time = pd.DatetimeIndex([utc], tz="UTC")
    pressure = 101325 * (1 - 0.0065 * altitude / 288.15) ** 5.2559
    sun = solarposition.spa_python(time, latitude, longitude, altitude, pressure, air, delta_t=None).iloc[0]
    zenith, azimuth = sun["apparent_zenith"], sun["azimuth"]
    extra = float(irradiance.get_extra_radiation(time).iloc[0])
    mass = atmosphere.get_absolute_airmass(atmosphere.get_relative_airmass(zenith), pressure)
    sky = clearsky.ineichen(zenith, mass, turbidity, altitude, extra)
    split = irradiance.erbs(0.6 * sky["ghi"], zenith, time)
    plane = irradiance.get_total_irradiance(tilt, facing, zenith, azimuth, sky["dni"], sky["ghi"], sky["dhi"],
                                            dni_extra=extra, albedo=ALBEDO, model="haydavies")
    light = float(plane["poa_global"])
    cell = temperature.sapm_cell(light, air, wind, **temperature.TEMPERATURE_MODEL_PARAMETERS["sapm"][FIXINGS[fixing]])
    return {
        "date": [time[0].year, time[0].month, time[0].day],
        "hour": number(time[0].hour + time[0].minute / 60 + time[0].second / 3600, 9),
        "place": [latitude, longitude, altitude], "air_c": air, "pressure_hpa": number(pressure / 100, 6),
        "turbidity": turbidity, "plane": [tilt, facing], "wind_m_s": wind, "fixing": fixing,
        "zenith_deg": number(sun["zenith"], 5), "apparent_zenith_deg": number(zenith, 5),
        "azimuth_deg": number(azimuth, 5), "extraterrestrial_w_m2": number(extra), "air_mass": number(mass, 6),
        "clear": [number(sky[key]) for key in ("ghi", "dni", "dhi")],
        "split": [number(np.ravel(split[key])[0]) for key in ("dni", "dhi")],
        "incidence_deg": number(irradiance.aoi(tilt, facing, zenith, azimuth), 5),
        "plane_w_m2": number(light), "cell_c": number(cell),
        "dc_w": number(pvsystem.pvwatts_dc(light, cell, RATED_W, PER_C)),
    }


def year(name):
    folder = importlib.resources.files("pvlib") / "data"
    data, about = iotools.read_tmy3(str(folder / name), map_variables=True, coerce_year=2023)
    # An hour belongs to the month and the hour in which it ends, less a minute.
    within = data.index - pd.Timedelta(minutes=1)
    data = data.assign(month=within.month, hour=within.hour)
    months = []
    for month, rows in data.groupby("month"):
        by_day = rows.groupby((rows.index - pd.Timedelta(minutes=1)).day)["temp_air"]
        means = rows.groupby("hour")[["ghi", "dni", "dhi", "temp_air"]].mean()
        months.append({
            "month": int(month), "days": len(by_day),
            "kwh_m2": [number(rows[key].sum() / 1000) for key in ("ghi", "dni", "dhi")],
            "mean_c": number(rows["temp_air"].mean()), "low_c": number(by_day.min().mean()),
            "high_c": number(by_day.max().mean()), "coldest_c": number(rows["temp_air"].min()),
            "hours": [[number(value, 3) for value in row] for row in means.to_numpy()],
        })
    return {"file": name, "place": [about["latitude"], about["longitude"], about["altitude"]],
            "utc_offset_h": about["TZ"], "months": months}


def rows(cases):
    return "[\n" + ",\n".join("  " + json.dumps(case) for case in cases) + "\n ]"


def main(target):
    parts = {"source": json.dumps("pvlib 0.16.1"),
             "panel": json.dumps({"rated_w": RATED_W, "per_c": PER_C, "albedo": ALBEDO}),
             "places": rows([place(case) for case in CASES]),
             "years": rows([year(name) for name in ("723170TYA.CSV", "703165TY.csv")])}
    with open(target, "w", encoding="utf-8") as file:
        file.write("{\n " + ",\n ".join(f'"{key}": {value}' for key, value in parts.items()) + "\n}\n")


main(sys.argv[1])
