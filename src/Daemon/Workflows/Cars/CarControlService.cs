using Grpc.Core;
using ScaleLink.Daemon.Contract;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.Cars;

/// <summary>What changes the cars, over gRPC.</summary>
internal sealed class CarControlService(CarShelf cars) : Wire.CarControl.CarControlBase
{
    public override Task<Wire.Car> SaveCar(Wire.SaveCarRequest request, ServerCallContext context)
    {
        var who = ApiErrors.Who(request.Who);
        return Task.FromResult(Answer(cars.Save(request.File, who)));
    }

    public override Task<Wire.Car> UseCar(Wire.UseCarRequest request, ServerCallContext context)
    {
        var who = ApiErrors.Who(request.Who);
        var car = cars.Find(request.Name, request.Hash.Length > 0 ? request.Hash : null) ?? throw CarsService.NoSuchCar(request.Name);
        cars.Use(car, who);
        return Task.FromResult(Answer(car));
    }

    public override Task<Wire.ReleaseCarResponse> ReleaseCar(Wire.ReleaseCarRequest request, ServerCallContext context)
    {
        cars.Use(null, ApiErrors.Who(request.Who));
        return Task.FromResult(new Wire.ReleaseCarResponse());
    }

    private Wire.Car Answer(SavedCar car) => CarMapping.Car(car, cars.InBay, withFile: true);
}
