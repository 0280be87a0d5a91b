using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;

namespace ScaleLink.Client.InclinometerZeros;

/// <summary>What a person with a pad in their hands can ask of the daemon, under one name.</summary>
internal sealed class InclinometerZeroCalls(DaemonConnection daemon, Corner corner, string who)
{
    // The daemon waits until the pad lies still.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    public Corner Corner => corner;

    public static Task<ListInclinometerZerosResponse> All(DaemonConnection daemon, CancellationToken stop) =>
        daemon.Ask(o => daemon.InclinometerZeros.ListInclinometerZerosAsync(new ListInclinometerZerosRequest(), o), stop);

    /// <summary>Takes a reading.</summary>
    /// <param name="seen">The pad as the person has it before their eyes; absent: whatever comes next.</param>
    /// <param name="saidTurned">It was turned although it reads the same.</param>
    /// <param name="stop">Gives up.</param>
    public Task<PadInclinometerZero> Read(PadInclinometerZero? seen, bool saidTurned, CancellationToken stop)
    {
        var request = new ReadTiltRequest { Corner = corner, Who = who, SaidTurned = saidTurned };
        if (seen is not null)
            (request.SerialNumber, request.Number) = (seen.SerialNumber, seen.NextNumber);
        return daemon.Ask(o => daemon.InclinometerZeroControl.ReadTiltAsync(request, o), Patience, stop);
    }

    public Task<PadInclinometerZero> Abandon(CancellationToken stop) =>
        daemon.Ask(o => daemon.InclinometerZeroControl.AbandonInclinometerTestAsync(new AbandonInclinometerTestRequest { Corner = corner, Who = who }, o), stop);

    public Task<PadInclinometerZero> Clear(CancellationToken stop) =>
        daemon.Ask(o => daemon.InclinometerZeroControl.ClearInclinometerZeroAsync(new ClearInclinometerZeroRequest { Corner = corner, Who = who }, o), stop);
}
