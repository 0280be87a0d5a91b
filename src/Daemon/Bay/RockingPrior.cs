using ScaleLink.Weighing.Settling.RockingBlind;

namespace ScaleLink.Daemon.Bay;

/// <summary>What is known beforehand of how the car in the bay rocks. Set by whoever knows the car, read by the weigher.</summary>
internal sealed class RockingPrior(BlindDirection otherwise)
{
    private BlindDirection? _ofCar;

    /// <summary>In effect now.</summary>
    public BlindDirection Direction => Volatile.Read(ref _ofCar) ?? otherwise;

    /// <summary>Another car, or none: then what the bay file says.</summary>
    public void Set(BlindDirection? ofCar) => Volatile.Write(ref _ofCar, ofCar);
}
