using ScaleLink.Daemon.Bay;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Journal;
using ScaleLink.Weighing.Calibration.Flow;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.Calibration.Service;

/// <summary>Puts what a plan costs and brings into the words of the public API.</summary>
internal static class PlanMapping
{
    /// <summary>What a request would begin, or every reason why it would not.</summary>
    public static Wire.PlannedProcedure Planned(Wire.StartProcedureRequest request, PadChannel pad, PadRecords records)
    {
        try
        {
            var choice = PlanReading.Choice(request, pad, records);
            return new Wire.PlannedProcedure
            {
                Chosen = Forecast(choice.Forecast, choice.Length),
                Other = choice.Other is { } other ? Forecast(other, choice.Length == PlanLength.Short ? PlanLength.Full : PlanLength.Short) : null,
                Words = choice.Words,
                TypedWords = Wire.Sentence.Of(choice.Words),
            };
        }
        catch (StepRefusedException refused)
        {
            return Refused(refused.Diagnostics);
        }
        catch (RefusedException refused)
        {
            return Refused([refused.Diagnostic]);
        }
    }

    public static Wire.PlanForecast Forecast(PlanForecast forecast, PlanLength length = PlanLength.Stated) => new()
    {
        Length = length switch { PlanLength.Short => Wire.PlanLength.Short, PlanLength.Full => Wire.PlanLength.Full, _ => Wire.PlanLength.Unspecified },
        Steps = (uint)forecast.Steps,
        Loads = (uint)forecast.Loads,
        HighestKg = forecast.HighestKg,
        Lifts = (uint)forecast.Effort.Lifts,
        LiftedKg = forecast.Effort.Kg,
        Foreseen = { forecast.Foreseen.Select(f => new Wire.ForeseenUncertainty { LoadKg = f.LoadKg, ExpandedKg = f.Kg }) },
    };

    private static Wire.PlannedProcedure Refused(IReadOnlyList<Diagnostic> why) => new() { Refusals = { why.Select(r => r.ToWire()) } };
}
