using ScaleLink.Weighing.Levelling;
using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.SiteCheck;

/// <summary>Slope and warp of the ground: as large as the height measurement says where they are left in, as large as its uncertainty where they are taken out.</summary>
static class HeightParts
{
    public static IEnumerable<SizedPart> Of(SiteCheckQuestion asked, Corners crossWeightSlope)
    {
        var corrections = asked is { Car: { } c, HeightMeasurement: { } s } ? new PatchCorrector(c, s).Correct(asked.LoadsKg).Corrections : [];
        yield return One(SiteCheckPartKind.Slope, CorrectionKind.Slope, car => h => car.FromSlope(h));
        yield return One(SiteCheckPartKind.Warp, CorrectionKind.Warp, car => h => car.FromWarp(h));

        SizedPart One(SiteCheckPartKind part, CorrectionKind kind, Func<CarStatics, Func<Corners, Corners>> effect)
        {
            // The pads stay where they are: what they do to one reading they do to the next.
            if (asked.Car is not { } car)
                return new(part, null, null, default(PartSize), "not known: nobody said which car will stand here", "Choose the car: Car on the page, or scalelink car use FILE.");
            if (asked.HeightMeasurement is not { } heightMeasurement)
                return new(part, null, null, default(PartSize), "not known: the heights of the pads were not measured", "Measure them with a level beam or a laser: scalelink patch heights FILE.");
            var (loads, spread) = HeightEffect.Of(car, heightMeasurement, effect);
            var known = crossWeightSlope.Dot(loads);
            var refusal = corrections.FirstOrDefault(x => x.Kind == kind)?.Refusal;
            var isOut = asked.On.Contains(kind) && refusal is null;
            var size = new PartSize(isOut ? 0 : known, Math.Sqrt(Math.Max(0, spread.VarianceOf(crossWeightSlope))));
            var shape = heightMeasurement.ShapeUnder(car.Contacts);
            Sentence seen = kind == CorrectionKind.Warp
                ? (Sentence)$"warp of {Mm(shape.WarpMm.Estimate):+0.0}"
                : $"slope of {shape.NoseUpDeg.Estimate:+0.00;-0.00;0.00}° nose up, {shape.LeftUpDeg.Estimate:+0.00;-0.00;0.00}° left up";
            return new(part, null, size, default(PartSize), $"{seen}, {(isOut ? "taken out; its uncertainty is left" : "left in the loads")}", Remedy(kind, isOut, refusal));
        }
    }

    static string Remedy(CorrectionKind kind, bool isOut, Diagnostic? refusal) => (isOut, refusal) switch
    {
        (true, _) => "Measure the heights of the pads again, four differences round the patch, or put shims under them: scalelink patch shims.",
        (_, { } no) => $"Put shims under the pads: scalelink patch shims. A correction is refused ({no.Code}).",
        _ => $"Put shims under the pads: scalelink patch shims; or correct the loads: scalelink patch on {(kind == CorrectionKind.Warp ? "warp" : "slope")}.",
    };
}
