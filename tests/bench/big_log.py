"""The same job with pandas' C reader and SciPy, as the plain alternative: read, find full pedal, differentiate.

Usage: big_log.py LOG pulls|read. Prints one line of JSON.
"""

import json
import resource
import sys
import time

import numpy
import pandas
import scipy
from scipy.signal import savgol_filter

start, cpu = time.perf_counter(), time.process_time()
table = pandas.read_csv(sys.argv[1], engine="c")
found = 0
if sys.argv[2] == "pulls":
    full = (table["Pedal (%)"] > 95).to_numpy()
    edges = numpy.flatnonzero(numpy.diff(full.astype(numpy.int8), prepend=0, append=0))
    speed = table["Vehicle Speed (km/h)"].to_numpy() / 3.6
    for first, last in edges.reshape(-1, 2):
        if last - first < 100:
            continue
        v = speed[first:last]
        acceleration = savgol_filter(v, 81, 2, deriv=1, delta=0.01)
        power = (1400 * acceleration + 165 + 0.39 * v * v) * v
        found += bool(numpy.isfinite(power).all())
detail = f"{len(table)} rows, {found} pulls; pandas {pandas.__version__}, scipy {scipy.__version__}"
print(
    json.dumps(
        {
            "seconds": time.perf_counter() - start,
            "cpuSeconds": time.process_time() - cpu,
            "peak_MB": resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024,
            "detail": detail,
        }
    )
)
