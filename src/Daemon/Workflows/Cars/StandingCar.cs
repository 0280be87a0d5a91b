using ScaleLink.Weighing.Cars;

namespace ScaleLink.Daemon.Workflows.Cars;

/// <summary>The car in the bay as it stands at this moment: as its file says, and without its bars while somebody says that they are off.</summary>
internal sealed class StandingCar
{
    private readonly CarShelf _cars;
    private readonly Lock _gate = new();
    private string? _withoutBars;
    private (SavedCar? Saved, bool BarsAreOff) _from;
    private CarModel? _model;

    public StandingCar(CarShelf cars)
    {
        _cars = cars;
        cars.Changed += Follow;
        Follow();
    }

    /// <summary>Told when it stands otherwise than before, not after every step.</summary>
    public event Action? Changed;

    /// <summary>Null when nobody said which car it is. The same object for as long as it stands so.</summary>
    public CarModel? Model => Volatile.Read(ref _model);

    /// <summary>Says whose bars are off, by the hash of its file; null: nobody's. Bars of another car than the one in the bay change nothing.</summary>
    public void WithoutBars(string? carHash)
    {
        lock (_gate)
            _withoutBars = carHash;
        Follow();
    }

    private void Follow()
    {
        lock (_gate)
        {
            var saved = _cars.InBay;
            var barsAreOff = saved is not null && saved.Hash == _withoutBars;
            if (ReferenceEquals(saved, _from.Saved) && barsAreOff == _from.BarsAreOff)
                return;
            _from = (saved, barsAreOff);
            Volatile.Write(ref _model, barsAreOff ? saved!.Model.WithBars(connected: false) : saved?.Model);
        }

        Changed?.Invoke();
    }
}
