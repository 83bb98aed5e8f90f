"""Level loans, times to pay off and rates of return, by numpy-financial."""

import json
import sys

import numpy_financial as financial

LOANS = [
    (18000, 7.9, 72),
    (6500, 11.25, 48),
    (950, 4.5, 6),
    (30000, 0.9, 120),
    (2400, 24.99, 24),
    (100, 36, 3),
    (74999, 6.125, 600),
]
BALANCES = [(2400, 18.0, 95), (800, 9.5, 61), (15000, 5.75, 312.4)]
FLOWS = [
    [-3200, 400, 900, 900, 1500],
    [-1000, 1100],
    [-5000, 120, 120, 120, 120, 120, 5200],
    [2000, -700, -700, -750],
    [-8000, 0, 0, 0, 0, 7100],
]


def number(value):
    """Twelve digits: more may differ from one processor to the next."""
    return float(f"{float(value):.12g}")


def loan(principal, percent, months):
    rate = percent / 1200
    middle = max(1, months // 3)
    payment = financial.pmt(rate, months, -principal)
    return {
        "principal": principal,
        "yearly_percent": percent,
        "months": months,
        "payment": number(payment),
        "middle": middle,
        "middle_interest": number(financial.ipmt(rate, middle, months, -principal)),
        "middle_principal": number(financial.ppmt(rate, middle, months, -principal)),
        "middle_balance": number(financial.fv(rate, middle, payment, -principal)),
        "total_interest": number(payment * months - principal),
    }


def main(target):
    data = {
        "source": "numpy-financial 1.0.0: pmt, ipmt, ppmt, fv, nper, irr",
        "loans": [loan(*terms) for terms in LOANS],
        "months_to_pay_off": [
            {"principal": p, "yearly_percent": r, "payment": a, "months": number(financial.nper(r / 1200, -a, p))}
            for p, r, a in BALANCES
        ],
        "rates_of_return": [{"flows": flows, "rate": number(financial.irr(flows))} for flows in FLOWS],
    }
    with open(target, "w", encoding="utf-8") as file:
        json.dump(data, file, indent=1)
        file.write("\n")


main(sys.argv[1])
