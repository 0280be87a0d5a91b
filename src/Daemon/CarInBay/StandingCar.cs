using ScaleLink.Daemon.Cars;
using ScaleLink.Daemon.Work;
using ScaleLink.Weighing.Cars;

namespace ScaleLink.Daemon.CarInBay;

/// <summary>The car in the bay as it stands at this moment: as its file says, and with its bars off while a session has them off.</summary>
internal sealed class StandingCar
{
    private readonly CarShelf _cars;
    private readonly WorkDesk _desk;
    private readonly Lock _gate = new();
    private (SavedCar? Saved, bool BarsAreOff) _from;
    private CarModel? _model;

    public StandingCar(CarShelf cars, WorkDesk desk)
    {
        (_cars, _desk) = (cars, desk);
        cars.Changed += Follow;
        desk.Changed += Follow;
        Follow();
    }

    /// <summary>Told when it stands otherwise than before, not after every step.</summary>
    public event Action? Changed;

    /// <summary>Null when nobody said which car it is. The same object for as long as it stands so.</summary>
    public CarModel? Model => Volatile.Read(ref _model);

    private void Follow()
    {
        lock (_gate)
        {
            var saved = _cars.InBay;
            // The bars that a session speaks of are those of its own car.
            var barsAreOff = saved is not null && _desk.Current?.Session is { BarsAreOffNow: true } session && session.Start.CarHash == saved.Hash;
            if (ReferenceEquals(saved, _from.Saved) && barsAreOff == _from.BarsAreOff)
                return;
            _from = (saved, barsAreOff);
            Volatile.Write(ref _model, barsAreOff ? saved!.Model.WithBars(connected: false) : saved?.Model);
        }

        Changed?.Invoke();
    }
}
