"""Points of the reference equations that the curves of core/fluids were fitted to, written to points.json.

Needs CoolProp (pip install coolprop), 8.0.0 when the file was made. Run: python3 points.py
Temperatures in K, values in SI: density kg/m3, latent heat J/kg, heat capacities J/(kg K), viscosity Pa s.
"""

import json
import pathlib

import CoolProp
from CoolProp.CoolProp import PropsSI

PRESSURE = 101325.0


def saturated(fluid, what, kelvin):
    return PropsSI(what, "T", kelvin, "Q", 0, fluid)


def latent(fluid, kelvin):
    return PropsSI("H", "T", kelvin, "Q", 1, fluid) - PropsSI("H", "T", kelvin, "Q", 0, fluid)


def liquid(fluid, what, kelvin):
    # Above its boiling point the liquid is taken along the saturation line.
    boiling = PropsSI("T", "P", PRESSURE, "Q", 0, fluid)
    if kelvin < boiling - 0.01:
        return PropsSI(what, "T", kelvin, "P", PRESSURE, fluid)
    return saturated(fluid, what, kelvin)


def points(fluid, of, low, high, step=10):
    return [[c + 273.15, of(fluid, c + 273.15)] for c in range(low, high + 1, step)]


def made(fluid, coldest):
    first = 1 if coldest == 0 else coldest
    return {
        "density": points(fluid, lambda f, t: liquid(f, "D", t), first, 79),
        "latentHeat": points(fluid, latent, first, 150),
        "liquidHeatCapacity": points(fluid, lambda f, t: liquid(f, "C", t), first, 99),
        "vapourHeatCapacity": points(fluid, lambda f, t: PropsSI("CP0MASS", "T", t, "P", PRESSURE, f), 20, 300, 20),
        "viscosity": points(fluid, lambda f, t: liquid(f, "V", t), first, 79),
    }


out = {
    "source": f"CoolProp {CoolProp.__version__}: IAPWS-95 (water), de Reuck and Craven 1993 (methanol), "
    "Schroeder et al. 2014 (ethanol), with their viscosity correlations",
    "water": made("Water", 0),
    "methanol": made("Methanol", -20),
    "ethanol": made("Ethanol", -20),
}
path = pathlib.Path(__file__).with_name("points.json")
path.write_text(json.dumps(out, indent=1) + "\n")
