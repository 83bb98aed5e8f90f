"""Moist air by PsychroLib (ASHRAE Fundamentals 2017, chapter 1), on a grid of temperature, humidity and air pressure."""

import json
import sys

import psychrolib

AIR_C = (-40, -25, -12, -5, -1, 0.5, 4, 9, 15, 20, 26, 33, 45, 60)
HUMIDITY = (0.05, 0.3, 0.6, 0.85, 1.0)
PRESSURE_PA = (101325, 80000)


def number(value, figures=8):
    return float(f"{value:.{figures}g}")


def air(air_c, humidity, pressure_pa):
    vapour_pa = psychrolib.GetVapPresFromRelHum(air_c, humidity)
    ratio = psychrolib.GetHumRatioFromVapPres(vapour_pa, pressure_pa)
    return [air_c, humidity, pressure_pa,
            *map(number, (vapour_pa, psychrolib.GetTDewPointFromVapPres(air_c, vapour_pa), ratio,
                          psychrolib.GetTWetBulbFromHumRatio(air_c, ratio, pressure_pa)))]


def main(target):
    psychrolib.SetUnitSystem(psychrolib.SI)
    cases = [air(air_c, humidity, pressure_pa)
             for air_c in AIR_C for humidity in HUMIDITY for pressure_pa in PRESSURE_PA]
    columns = ["air_c", "relative_humidity", "pressure_pa", "vapour_pa", "dew_point_c", "humidity_ratio", "wet_bulb_c"]
    with open(target, "w", encoding="utf-8") as file:
        file.write('{\n "source": "PsychroLib 2.5.0",\n "columns": ' + json.dumps(columns) + ',\n "cases": [\n')
        file.write(",\n".join("  " + json.dumps(case) for case in cases) + "\n ]\n}\n")


main(sys.argv[1])
