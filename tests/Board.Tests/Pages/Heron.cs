using ScaleLink.Api.V1;
using Shared;
using Shared.Rig;

namespace Board.Tests.Pages;

/// <summary>The demo car of the documents.</summary>
internal static class Heron
{
    public static string File { get; } = RepositoryRoot.File("docs", "cars", "heron.json");

    public static void PutInTheBay(BayRig rig)
    {
        var cars = new CarControl.CarControlClient(rig.Daemon.Channel);
        var car = cars.SaveCar(new SaveCarRequest { File = System.IO.File.ReadAllText(File), Who = "Ada" });
        cars.UseCar(new UseCarRequest { Name = car.Name, Who = "Ada" });
    }
}
