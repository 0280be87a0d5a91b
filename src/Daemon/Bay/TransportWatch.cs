using ScaleLink.Daemon.Links;

namespace ScaleLink.Daemon.Bay;

/// <summary>What can be wrong on the way from a pad to here: damage, loss, silence, or bytes without sense. Its pad guards it.</summary>
internal sealed class TransportWatch
{
    private const string RepairDamage = "Check baud rate, cable, shield and earth; keep the cable away from chargers and inverters. With a new pad, check what it speaks.";
    private const string RepairLoss = "Check cable and hub; lower the pad's sample rate.";

    private readonly DamageWatch _damage = new("messages arrived damaged.");
    private readonly DamageWatch _loss = new("samples never arrived: the pad's numbering has gaps.");

    public void Restart()
    {
        _damage.Restart();
        _loss.Restart();
    }

    /// <summary>Updates the faults; true when one began or ended.</summary>
    public bool Tick(in ProtocolCounters total, long missed, FaultSet faults, long nowNs)
    {
        var isNews = false;
        if (_damage.Tick(total.BadFrames, total.Frames, nowNs) is { } damage)
            isNews |= faults.Set(damage.IsBad, PadCodes.BytesDamaged, damage.Message, RepairDamage, nowNs);
        if (_loss.Tick(missed, total.Frames, nowNs) is { } loss)
            isNews |= faults.Set(loss.IsBad, PadCodes.SamplesLost, loss.Message, RepairLoss, nowNs);
        return isNews;
    }

    /// <summary>A valid sample ends silence; damage has to end by itself.</summary>
    public bool Heard(FaultSet faults) => faults.Clear(LinkCodes.PadSilent) | (!_damage.IsBad && faults.Clear(PadCodes.BytesDamaged));

    /// <summary>No sample for too long: with bytes it is another fault than without.</summary>
    public static void Silent(bool hasBytes, FaultSet faults, long nowNs)
    {
        if (hasBytes)
            faults.Raise(PadCodes.BytesDamaged, "Bytes arrive, but nothing valid is in them.", RepairDamage, nowNs);
        else
            faults.Raise(LinkCodes.PadSilent, "The port is open, but the pad sends nothing.", "Check the pad's power and its baud rate; restart the pad.", nowNs);
    }
}
