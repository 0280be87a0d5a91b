using Google.Protobuf.WellKnownTypes;
using ScaleLink.Daemon.Pipeline;
using ScaleLink.Daemon.Proving;
using ScaleLink.Measure;
using ScaleLink.Weighing.Calibration;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Publishing.Grpc.Rotations;

/// <summary>Puts a rotation into the words of the public API.</summary>
internal sealed class RotationMapping(RotationDesk desk, ApiMapping mapping, BayClock clock)
{
    /// <summary>The newest rotation, and what the pads do now.</summary>
    public Wire.RotationView Now()
    {
        var view = desk.Newest is { } rotation ? Recorded(rotation) : new Wire.RotationView { State = Wire.RotationState.None };
        view.Cautions.AddRange(RotationCautions.All);
        // After one that has ended the next weighing begins another.
        if (view.State is not Wire.RotationState.Review)
        {
            view.Present.AddRange(desk.Present);
            view.WaitingFor = desk.WaitingFor is { } finding ? Now(finding) : null;
            view.Ready = view.WaitingFor is null;
        }

        return view;
    }

    /// <summary>What is on record of a rotation, whatever the pads do now.</summary>
    public Wire.RotationView Recorded(RotationRecord rotation)
    {
        var outcome = rotation.Flow.IsComplete ? rotation.Flow.Outcome() : null;
        var view = new Wire.RotationView
        {
            RotationId = $"{rotation.Id}",
            State = State(rotation),
            BegunAt = Timestamp.FromDateTimeOffset(rotation.BegunAt),
            BegunBy = rotation.BegunBy,
            Placements = { rotation.Flow.Taken.Select((taken, i) => Placement(taken, i + 1)) },
            Result = (rotation.Ending?.Result ?? outcome?.Result) is { } result ? Result(result) : null,
            Refused = outcome?.Refused is { } refused ? Now(refused) : null,
        };
        if (rotation is { IsOpen: true, Flow.Left: [var next, ..] })
            view.Next.AddRange(next);
        if (rotation.Ending is { } ending)
            (view.EndedAt, view.EndedBy, view.Remark) = (Timestamp.FromDateTimeOffset(ending.At), ending.Who, ending.Remark);
        return view;
    }

    private static Wire.Placement Placement(PlacementReading taken, int number) => new()
    {
        Number = (uint)number,
        Time = Timestamp.FromDateTimeOffset(taken.Time),
        Pads = { taken.Pads.Select(p => new Wire.PlacedPad { SerialNumber = p.Pad, LoadKg = p.LoadKg, Calibration = p.Calibration }) },
    };

    private static Wire.RotationResult Result(RotationResult result)
    {
        var loads = result.LoadsKg;
        return new Wire.RotationResult
        {
            Pads = { result.Gains.Select(gain => Departure(gain, gain.Expanded(result.DegreesOfFreedom))) },
            LoadsKg = loads.ToWire(),
            CrossWeightPercent = Shares.Percent(Shares.CrossWeight, loads),
            WarpKg = { result.WarpKg },
            ResidualSdKg = result.ResidualSdKg,
            DegreesOfFreedom = (uint)result.DegreesOfFreedom,
            CannotSee = { RotationResult.CannotSee },
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

    private static Wire.RotationState State(RotationRecord rotation) => rotation switch
    {
        { Ending.Result: not null } => Wire.RotationState.Finished,
        { Ending: not null } => Wire.RotationState.Abandoned,
        { Flow.IsComplete: true } => Wire.RotationState.Review,
        _ => Wire.RotationState.Measuring,
    };
}
