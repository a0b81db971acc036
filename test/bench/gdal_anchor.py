"""The work of GDAL alone, in one process with the ground in memory, and GRASS r.viewshed as a module; CPU time by request.
usage: gdal_anchor.py GROUND EAST NORTH GRASS_EAST GRASS_NORTH EYE CURVE
then lines of a work and a number of calls on standard input; answers milliseconds a call."""
import resource
import subprocess
import sys
import time

from osgeo import gdal, ogr

gdal.UseExceptions()
path, east, north, grass_east, grass_north, eye, curve = sys.argv[1], *map(float, sys.argv[2:8])
ground = gdal.Translate("", path, format="MEM")
band = ground.GetRasterBand(1)


def viewshed():
    gdal.ViewshedGenerate(band, "MEM", "", [], east, north, eye, 0.0, 255, 0, 0, -1, curve, gdal.GVM_Edge, 0)


def hillshade():
    gdal.DEMProcessing("", ground, "hillshade", format="MEM")


def contours():
    lines = ogr.GetDriverByName("Memory").CreateDataSource("lines")
    layer = lines.CreateLayer("lines", None, ogr.wkbLineString)
    layer.CreateField(ogr.FieldDefn("ID", ogr.OFTInteger))
    layer.CreateField(ogr.FieldDefn("elev", ogr.OFTReal))
    gdal.ContourGenerate(band, 20, 0, [], 0, 0, layer, 0, 1)


def grass():
    subprocess.run(
        ["r.viewshed", "-b", "-c", "-r", "--overwrite", "--quiet", "input=ground", "output=seen", "memory=4000",
         f"coordinates={grass_east},{grass_north}", f"observer_elevation={eye}", "target_elevation=0"],
        check=True, stderr=subprocess.DEVNULL)


def spent(work):
    if work is grass:
        used = resource.getrusage(resource.RUSAGE_CHILDREN)
        return used.ru_utime + used.ru_stime
    return time.process_time()


WORKS = {"viewshed": viewshed, "hillshade": hillshade, "contours": contours, "grass": grass}
print("ready", flush=True)
for line in sys.stdin:
    name, calls = line.split()
    work = WORKS[name]
    before = spent(work)
    for _ in range(int(calls)):
        work()
    print((spent(work) - before) * 1000 / int(calls), flush=True)
