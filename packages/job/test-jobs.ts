/** A job with every key that says what the liquid and the stick do, for the tests of this room. */
export const WET_JOB = `{
  "format": "runback-job", "version": 1, "title": "Tender 7", "units": "mm",
  "tubes": {
    "t12": { "material": "stainless-304", "od": 12, "wall": 1 },
    "t18": { "material": "steel-soft", "od": 18, "wall": 1.5 }
  },
  "materials": { "steel-soft": { "strength": 310, "allowable": 77.5, "source": "mill sheet" } },
  "fluids": {
    "gear-oil": { "name": "gear oil", "density": 890, "viscosity": 220, "surfaceTension": 32, "source": "the can" },
    "water": { "viscosity": 1.3 }
  },
  "services": {
    "brake": { "bleeds": true },
    "waste": { "drains": true, "minSlope": "2 %", "minSlopeTilted": "5 mm/m", "source": "our drawing 3" }
  },
  "lines": [
    {
      "id": "lower", "tube": "t12", "service": "waste", "fluid": "gear-oil",
      "points": [{ "at": [0, 0, 0] }, { "at": [0, 0, 200], "radius": 40 }, { "at": [200, 0, 240] }],
      "drain": { "to": "A", "rule": "one-in-50" },
      "duty": {
        "pressure": "60 psi", "flow": "2 gal/min", "toward": "A",
        "temperature": { "fitted": 15, "lowest": -10, "highest": 90 }, "safetyFactor": 6, "wallTolerance": 0.125
      },
      "bleed": { "to": "Z", "tilted": true },
      "endA": { "opening": "8 mm" },
      "stick": {
        "kind": "links", "enters": "Z", "thickness": 4, "width": 5, "link": 30, "note": "from the shelf",
        "pan": { "middle": [10, 20, -60], "size": [300, "8 in"] }
      }
    },
    { "id": "upper", "tube": "t18", "service": "brake", "fluid": "water",
      "points": [{ "at": [200, 0, 240] }, { "at": [300, 0, 300] }],
      "drain": { "to": "A", "minSlope": "1/4 in/ft", "minSlopeTilted": -1 }, "duty": { "pressure": 2.5 } },
    { "id": "lower-left", "mirrorOf": "lower", "across": "y", "offset": 5 }
  ],
  "runs": [
    {
      "id": "dip", "name": "dipstick", "lines": ["lower", "upper"], "drain": "A", "note": "steps down",
      "stick": {
        "kind": "blade", "enters": "Z", "material": "steel-soft", "thickness": 0.8, "width": 6,
        "tip": { "length": 25, "thickness": 3, "width": 7 }, "seat": 4, "beyond": 12, "friction": [0.1, 0.25],
        "fills": [{ "litres": 1, "at": 10 }, { "litres": 2.5, "at": "1 in" }],
        "levels": [{ "name": "LOW", "litres": 1.2 }, { "name": "FULL", "litres": 2 }]
      }
    },
    { "id": "bare", "lines": ["lower-left"] }
  ]
}
`;
