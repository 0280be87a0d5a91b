using ScaleLink.Api.V1;
using ScaleLink.Client.Readings;
using ScaleLink.Client.Runtime;
using ScaleLink.Measure;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Statics;
using static ScaleLink.Measure.Sentences.Arguments;

namespace ScaleLink.Client.Cars;

/// <summary>Cars as lines.</summary>
internal static class CarPage
{
    public static IEnumerable<string> Good(string path, CarModel car)
    {
        yield return $"{path}: good. {PeerText.Clean(car.Name, 40)}, target {AimWords.Target(car.Targets.CrossWeightPercent, car.Targets.CrossWeightTolerancePercent, Glyphs.Plain)}.";
        foreach (var line in Guesses(car.Guesses()))
            yield return line;
    }

    public static IEnumerable<string> Effects(CarModel car, double totalKg, bool isAssumed, Glyphs glyphs)
    {
        var statics = new CarStatics(car, totalKg);
        var effects = TurnEffects.Of(statics);
        yield return glyphs.Line($"{PeerText.Clean(car.Name, 40)}, {Kg(totalKg):0}{(isAssumed ? " (assumed: give --total)" : "")}. One turn up of");
        yield return "        LF kg   RF kg   LR kg   RR kg   cross weight %      LF mm   RF mm   LR mm   RR mm".Replace("kg", glyphs.MassSign(), StringComparison.Ordinal).Replace("mm", glyphs.LengthSign(), StringComparison.Ordinal);
        foreach (var corner in Corners.All.ToArray())
        {
            var forecast = effects.Forecast(default(Corners).With(corner, 1));
            var (loads, heights) = (forecast.Loads, forecast.Heights);
            var cross = 100 / totalKg * (loads.RF + loads.LR);
            var uncertainty = 200 / totalKg * Math.Sqrt(forecast.LoadCovariance.VarianceOf(Shares.CrossWeight));
            yield return car.Suspension[corner].Perch.CanTurn
                ? $"  {corner} {M(loads.LF),8} {M(loads.RF),7} {M(loads.LR),7} {M(loads.RR),7}    {cross,6:+0.00;-0.00} +-{uncertainty:0.00}  {L(heights.LF),9} {L(heights.RF),7} {L(heights.LR),7} {L(heights.RR),7}"
                : $"  {corner}  fixed";
        }

        yield return "Cross weight = (RF + LR) / total; +- covers about 95 %, from the uncertainties in the file.";
        yield return car.FrontBar is { Connected: true } || car.RearBar is { Connected: true } ? "Bars connected: part of a turn only winds them." : "Bars not connected.";
        foreach (var line in Marks(car, glyphs))
            yield return line;
        foreach (var line in Guesses(car.Guesses()))
            yield return line;

        string M(double kg) => glyphs.Kg(kg, "+0.0;-0.0");

        string L(double mm) => glyphs.Line($"{BareMm(mm):+0.0}");
    }

    public static IEnumerable<string> InBay(Car car)
    {
        yield return $"{PeerText.Clean(car.Name, 40)} stands in the bay. Revision {PeerText.Clean(car.Hash, 12)}, target {AimWords.Target(car.TargetCrossWeightPercent, car.TargetTolerancePercent, Glyphs.Plain)}.";
        foreach (var line in Guesses(car.Guesses))
            yield return line;
    }

    public static IEnumerable<string> List(ListCarsResponse list)
    {
        if (list.Cars.Count == 0)
            yield return "No car was saved. Make a file with scalelink car new FILE, then scalelink car use FILE.";
        foreach (var car in list.Cars)
            yield return $"{(car.InBay ? "*" : " ")} {PeerText.Clean(car.Name, 30),-30} {PeerText.Clean(car.Hash, 12)}  {car.SavedAt.LocalMinute()}  {PeerText.Clean(car.Who, 24)}";
        if (list.Cars.Any(c => c.InBay))
            yield return "* in the bay";
    }

    private static IEnumerable<string> Marks(CarModel car, Glyphs glyphs) => car.RideHeightMarks is not { } marks ? []
        : [glyphs.Line($"Ride heights are measured at marks; front left {Mm(marks.LF.BehindFrontAxleMm):0} behind the front axle and {Mm(marks.LF.LeftOfCentreMm):0} left, rear right {Mm(marks.RR.BehindFrontAxleMm):0} behind and {Mm(-marks.RR.LeftOfCentreMm):0} right of the centreline. The heights above are at the wheels.")];

    private static IEnumerable<string> Guesses(IReadOnlyCollection<string> guesses) => guesses.Count == 0 ? []
        : [$"Guessed values, none was stated: {string.Join(", ", guesses.Select(g => PeerText.Clean(g, 40)))}. Plans say so; each recorded step teaches what they miss."];
}
