#!/usr/bin/env python3
"""Fits the laws of flow with SciPy and prints the figures that tests/Viscolog.Core.Tests/Published/FlowReferenceTests.cs holds.

Made with SciPy 1.10.1, NumPy 1.24.2 (Debian 12: python3-scipy), Python 3.11. Run: python3 tests/peers/flow_reference.py
The data are made here: a law, and factors of scatter that stand in the script, rounded to four digits.
"""
import numpy as np
import scipy
from scipy.optimize import curve_fit

RATES = np.array([0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200, 500])
SCATTER = np.array([1.012, 0.991, 0.985, 1.008, 1.015, 0.994, 0.989, 1.011, 1.003, 0.992, 1.006, 0.997])

LAWS = {
    "newton": (lambda g, eta: eta * g, ["viscosity_pas"], [1.0]),
    "power-law": (lambda g, k, n: k * g**n, ["consistency_pa_sn", "flow_index"], [5.0, 0.5]),
    "bingham": (lambda g, t, eta: t + eta * g, ["yield_stress_pa", "plastic_viscosity_pas"], [5.0, 1.0]),
    "herschel-bulkley": (lambda g, t, k, n: t + k * g**n, ["yield_stress_pa", "consistency_pa_sn", "flow_index"], [5.0, 5.0, 0.5]),
    "casson": (lambda g, t, eta: (np.sqrt(t) + np.sqrt(eta * g)) ** 2, ["yield_stress_pa", "casson_viscosity_pas"], [4.0, 0.2]),
    "cross": (
        lambda g, e0, ei, lam, m: g * (ei + (e0 - ei) / (1 + (lam * g) ** m)),
        ["zero_shear_pas", "infinite_shear_pas", "time_s", "index"], [50.0, 0.1, 1.0, 0.8]),
    "carreau": (
        lambda g, e0, ei, lam, n: g * (ei + (e0 - ei) * (1 + (lam * g) ** 2) ** ((n - 1) / 2)),
        ["zero_shear_pas", "infinite_shear_pas", "time_s", "index"], [50.0, 0.1, 1.0, 0.3]),
}

SETS = {
    "herschel-bulkley": LAWS["herschel-bulkley"][0](RATES, 9.0, 6.0, 0.48) * SCATTER,
    "casson": LAWS["casson"][0](RATES, 4.0, 0.35) * SCATTER,
    "cross": LAWS["cross"][0](RATES, 40.0, 0.2, 1.5, 0.85) * SCATTER,
    "carreau": LAWS["carreau"][0](RATES, 40.0, 0.2, 1.5, 0.3) * SCATTER,
}


def main():
    print("SciPy", scipy.__version__, "NumPy", np.__version__)
    print("rates", list(RATES))
    for source, stresses in SETS.items():
        stresses = np.array([float(f"{s:.4g}") for s in stresses])
        print("\ndata made with", source, list(stresses))
        fits = [source] if source in ("cross", "carreau") else ["newton", "power-law", "bingham", "herschel-bulkley", "casson"]
        for weights in ("relative", "none"):
            sigma = stresses if weights == "relative" else np.ones_like(stresses)
            for name in fits:
                law, names, start = LAWS[name]
                popt, pcov = curve_fit(
                    law, RATES, stresses, p0=start, sigma=sigma, absolute_sigma=False, method="lm", ftol=1e-15, xtol=1e-15, gtol=1e-15, maxfev=100000)
                rss = float(np.sum(((law(RATES, *popt) - stresses) / sigma) ** 2))
                se = np.sqrt(np.diag(pcov))
                print(weights, name, f"rss={rss:.8g}", *(f"{n}={v:.8g}({s:.5g})" for n, v, s in zip(names, popt, se)))


main()
