namespace ScaleLink.Weighing.Cars;

/// <summary>Looks over where ride heights are measured.</summary>
static class MarkCheck
{
    // From the front axle: nothing that races reaches further. Nearer together, a millimetre at a mark is many at a wheel.
    const double FurthestMm = 8000, NearestMm = 300;

    public static IEnumerable<Diagnostic> Mistakes(CarModel car)
    {
        if (car.RideHeightMarks is not { } marks)
            yield break;
        foreach (var corner in Corners.All.ToArray())
            if (!(Math.Abs(marks[corner].X) <= FurthestMm && Math.Abs(marks[corner].Y) <= FurthestMm))
                yield return Wrong($"The mark of {corner} is not within the car.", "Give its place in mm: behind the front axle, and left of the centreline.");
        var (x, y) = (marks.Map(m => m.X), marks.Map(m => m.Y));
        if (!(Math.Min(x.LF, x.RF) - Math.Max(x.LR, x.RR) >= NearestMm && Math.Min(y.LF, y.LR) - Math.Max(y.RF, y.RR) >= NearestMm))
            yield return Wrong($"The marks of ride height are less than {Mm(NearestMm):0} apart, or not in the order of the corners.",
                "Put those in front before those behind, and those of the left, with positive left_of_centre_mm, left of those of the right; the further apart the better.");
    }

    static Diagnostic Wrong(Sentence message, Sentence remedy) => new(CarCodes.Marks, message, remedy) { Where = "ride_height_marks" };
}
