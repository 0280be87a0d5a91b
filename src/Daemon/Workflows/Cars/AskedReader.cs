using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Contract;
using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Cars.Files;
using ScaleLink.Weighing.Statics;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.Cars;

/// <summary>The car and the loads that a question is about: those given, or those in the bay.</summary>
internal sealed class AskedReader(CarShelf cars, LiveBay bay)
{
    public CarModel Car(string file)
    {
        if (file.Length == 0)
            return cars.InBay?.Model ?? throw ApiErrors.NotNow(CarCodes.NoCarInBay, "Nobody said which car stands in the bay.", "Choose one (Car on the page, or scalelink car use), or send a car file with the question.");
        var read = CarFile.Read(file);
        return read.Car ?? throw ApiErrors.Unusable(read.Mistakes);
    }

    /// <exception cref="DiagnosticException">The loads given are not those of a car on its wheels.</exception>
    public LoadSummary Loads(Wire.CornerValues? given) => given is null ? Present() : Summary(given);

    /// <summary>The present settled loads; nothing while there are none.</summary>
    public LoadSummary? PresentOrNone() => bay.Newest is { Verdict: BayVerdict.Settled } reading ? Of(reading) : null;

    private LoadSummary Present() => PresentOrNone()
        ?? throw ApiErrors.NotNow(CarCodes.NoSettledLoads, "The bay has no settled loads at this moment.", "Wait until the car is settled, or send loads with the question.");

    private static LoadSummary? Of(BayReading reading)
    {
        if (reading.Corners.Any(c => c.LoadKg is not { StandardUncertainty: not null, Estimate: > 0 }))
            return null;
        return new(
            Corners.From(c => reading.Corners[(int)c].LoadKg!.Value.Estimate),
            CornerMatrix.Diagonal(Corners.From(c => Square(reading.Corners[(int)c].LoadKg!.Value.StandardUncertainty!.Value))));
    }

    private static LoadSummary Summary(Wire.CornerValues given)
    {
        Value[] each = [given.Lf.ToGiven(), given.Rf.ToGiven(), given.Lr.ToGiven(), given.Rr.ToGiven()];
        if (each.Any(q => !(q.Uncertainty >= 0 && double.IsFinite(q.Uncertainty))))
            throw new DiagnosticException(new Diagnostic(CarCodes.Uncertainty, "The standard uncertainty of a load is not a number of zero or more.", "Give one standard uncertainty with each load, kg."));
        return new(Corners.From(c => each[(int)c].Estimate), CornerMatrix.Diagonal(Corners.From(c => Square(each[(int)c].Uncertainty))));
    }

    private static double Square(double value) => value * value;
}
