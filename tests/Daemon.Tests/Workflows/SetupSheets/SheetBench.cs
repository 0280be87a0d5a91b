using Daemon.Tests.Workflows.WorkSessions;
using ScaleLink.Daemon.Configuration;
using ScaleLink.Daemon.Workflows.Cars;
using ScaleLink.Daemon.Workflows.SetupSheets;
using ScaleLink.Measure;

namespace Daemon.Tests.Workflows.SetupSheets;

/// <summary>Setup sheets on a ledger of their own, beside a work session on the same car.</summary>
internal sealed class SheetBench : IDisposable
{
    private static readonly BayConfiguration Bay = BayFile.Parse("bay = \"unit6\"", "bay.toml").Configuration!;

    public SheetBench()
    {
        Cars = new CarShelf(Work.Database, Bay, Work.Time);
        Cars.Use(Cars.Save(Bench.CarText, "crew"), "crew");
        Desk = Again();
    }

    public static SheetKey Moor { get; } = new("Heron", "Bramble Moor", "first driver");

    public Bench Work { get; } = new();

    public CarShelf Cars { get; }

    public SheetDesk Desk { get; }

    /// <summary>As another start of the daemon reads it.</summary>
    public SheetDesk Again() => new(Work.Database, Cars, Work.Time);

    public SheetVersion Save(SheetKey key, int seen, string who, params (string Slot, string Value)[] typed) => Desk.Save(key, seen, Draft(typed), who);

    public static SheetDraft Draft(params (string Slot, string Value)[] typed) => SheetDraft.Of(typed, "", "Heron", Units.Metric, "", onCar: true);

    public static Diagnostic Refusal(Action act) => Assert.ThrowsAny<Exception>(act) switch
    {
        ScaleLink.Daemon.Journal.StepRefusedException step => step.Diagnostic,
        DiagnosticException input => input.Diagnostics[0],
        var other => throw other,
    };

    public void Dispose() => Work.Dispose();
}
