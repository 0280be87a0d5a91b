using Google.Protobuf.WellKnownTypes;
using ScaleLink.Daemon.Contract;
using ScaleLink.Daemon.Runtime;
using ScaleLink.Measure;
using ScaleLink.Weighing.PadInterchange;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.PadInterchange;

/// <summary>Puts a pad interchange into the words of the public API.</summary>
internal sealed class InterchangeMapping(InterchangeDesk desk, ApiMapping mapping, BayClock clock)
{
    /// <summary>The newest pad interchange, and what the pads do now.</summary>
    public Wire.InterchangeView Now()
    {
        var view = desk.Newest is { } interchange ? Recorded(interchange) : new Wire.InterchangeView { State = Wire.InterchangeState.None };
        view.Cautions.AddRange(InterchangeCautions.All);
        // After one that has ended the next weighing begins another.
        if (view.State is not Wire.InterchangeState.Review)
        {
            view.Present.AddRange(desk.Present);
            view.WaitingFor = desk.WaitingFor is { } finding ? Now(finding) : null;
            view.Ready = view.WaitingFor is null;
        }

        return view;
    }

    /// <summary>What is on record of a pad interchange, whatever the pads do now.</summary>
    public Wire.InterchangeView Recorded(InterchangeRecord interchange)
    {
        var outcome = interchange.Flow.IsComplete ? interchange.Flow.Outcome() : null;
        var view = new Wire.InterchangeView
        {
            InterchangeId = $"{interchange.Id}",
            State = State(interchange),
            BegunAt = Timestamp.FromDateTimeOffset(interchange.BegunAt),
            BegunBy = interchange.BegunBy,
            Placements = { interchange.Flow.Taken.Select((taken, i) => Placement(taken, i + 1)) },
            Result = (interchange.Ending?.Result ?? outcome?.Result) is { } result ? Result(result) : null,
            Refused = outcome?.Refused is { } refused ? Now(refused) : null,
        };
        if (interchange is { IsOpen: true, Flow.Left: [var next, ..] })
            view.Next.AddRange(next);
        if (interchange.Ending is { } ending)
            (view.EndedAt, view.EndedBy, view.Remark) = (Timestamp.FromDateTimeOffset(ending.At), ending.Who, ending.Remark);
        return view;
    }

    private static Wire.Placement Placement(PlacementReading taken, int number) => new()
    {
        Number = (uint)number,
        Time = Timestamp.FromDateTimeOffset(taken.Time),
        Pads = { taken.Pads.Select(p => new Wire.PlacedPad { SerialNumber = p.Pad, LoadKg = p.LoadKg, Calibration = p.Calibration }) },
    };

    private static Wire.InterchangeResult Result(InterchangeResult result)
    {
        var loads = result.LoadsKg;
        return new Wire.InterchangeResult
        {
            Pads = { result.Gains.Select(gain => Departure(gain, gain.Expanded(result.DegreesOfFreedom))) },
            LoadsKg = loads.ToWire(),
            CrossWeightPercent = Shares.Percent(Shares.CrossWeight, loads),
            WarpKg = { result.WarpKg },
            ResidualSdKg = result.ResidualSdKg,
            DegreesOfFreedom = (uint)result.DegreesOfFreedom,
            CannotSee = { InterchangeResult.CannotSee },
        };
    }

    private static Wire.PadDeparture Departure(PadGain gain, double expanded) => new()
    {
        SerialNumber = gain.Pad,
        Relative = gain.Relative,
        StandardUncertainty = gain.StandardUncertainty,
        Expanded = expanded,
        Departs = Math.Abs(gain.Relative) > expanded,
    };

    private Wire.Diagnostic Now(Diagnostic refusal) => mapping.Told(refusal with { SinceNs = clock.NowNs });

    private static Wire.InterchangeState State(InterchangeRecord interchange) => interchange switch
    {
        { Ending.Result: not null } => Wire.InterchangeState.Finished,
        { Ending: not null } => Wire.InterchangeState.Abandoned,
        { Flow.IsComplete: true } => Wire.InterchangeState.Review,
        _ => Wire.InterchangeState.Measuring,
    };
}
