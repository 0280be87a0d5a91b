using Grpc.Core;
using ScaleLink.Daemon.Contract;
using ScaleLink.Measure;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Cars.Files;
using ScaleLink.Weighing.Statics;
using ScaleLink.Weighing.WorkSessions.Planning;
using Wire = ScaleLink.Api.V1;

namespace ScaleLink.Daemon.Workflows.Cars;

/// <summary>Cars, and what statics says about them, over gRPC.</summary>
internal sealed class CarsService(CarShelf cars, AskedReader asked) : Wire.Cars.CarsBase
{
    public override Task<Wire.ListCarsResponse> ListCars(Wire.ListCarsRequest request, ServerCallContext context)
    {
        var list = new Wire.ListCarsResponse();
        list.Cars.AddRange(cars.All().Select(c => CarMapping.Car(c, cars.InBay, withFile: false)));
        return Task.FromResult(list);
    }

    public override Task<Wire.Car> GetCar(Wire.GetCarRequest request, ServerCallContext context)
    {
        var car = request.Name.Length == 0
            ? cars.InBay ?? throw ApiErrors.NotNow(CarCodes.NoCarInBay, "Nobody said which car stands in the bay.", "Choose one: Car on the page, or scalelink car use FILE.")
            : cars.Find(request.Name, request.Hash.Length > 0 ? request.Hash : null) ?? throw NoSuchCar(request.Name);
        return Task.FromResult(CarMapping.Car(car, cars.InBay, withFile: true));
    }

    public override Task<Wire.CheckCarResponse> CheckCar(Wire.CheckCarRequest request, ServerCallContext context)
    {
        var read = CarFile.Read(request.File);
        var answer = new Wire.CheckCarResponse { Name = read.Car?.Name ?? "" };
        answer.Mistakes.AddRange(read.Mistakes.Select(WireValues.ToWire));
        answer.Guesses.AddRange(read.Car?.Guesses() ?? []);
        return Task.FromResult(answer);
    }

    public override Task<Wire.ListCarQuestionsResponse> ListCarQuestions(Wire.ListCarQuestionsRequest request, ServerCallContext context) =>
        Task.FromResult(CarAnswers.Questions(Units.Named(request.MassUnit, request.LengthUnit)));

    public override Task<Wire.DescribeCarResponse> DescribeCar(Wire.DescribeCarRequest request, ServerCallContext context) =>
        Task.FromResult(CarAnswers.Describe(request.Answers.ToDictionary(), Units.Named(request.MassUnit, request.LengthUnit)));

    public override Task<Wire.WhatIfAnswer> AskWhatIf(Wire.AskWhatIfRequest request, ServerCallContext context)
    {
        var car = asked.Car(request.Asked?.CarFile ?? "");
        var now = asked.Loads(request.Asked?.LoadsKg);
        var statics = new CarStatics(request.HasBarsConnected ? car.WithBars(request.BarsConnected) : car, now.Loads.Sum);
        var question = new WhatIf
        {
            Turns = request.Turns.ToCorners(),
            PadsRaisedMm = request.PadsRaisedMm.ToCorners(),
            Masses = [.. request.Masses.Select(m => new MassChange(m.Name, m.Kg, PlaceOf(m.Place)))],
        };
        var (loads, heights) = question.Ask(statics, now);
        return Task.FromResult(new Wire.WhatIfAnswer { Now = now.ToWire(), Then = loads.ToWire(), HeightChangesMm = heights.ToWire() });
    }

    public override Task<Wire.Balance> GetBalance(Wire.GetBalanceRequest request, ServerCallContext context)
    {
        var car = asked.Car(request.Asked?.CarFile ?? "");
        var now = asked.Loads(request.Asked?.LoadsKg);
        var statics = new CarStatics(car, now.Loads.Sum);
        var cg = CentreOfGravity.From(now, car);
        var target = request.HasCrossWeightPercent ? request.CrossWeightPercent : car.Targets.CrossWeightPercent;
        var balance = new Wire.Balance { Figures = now.ToWire(), CgBehindFrontAxleMm = cg.BehindFrontAxleMm.ToWire(), CgLeftOfCentreMm = cg.LeftOfCentreMm.ToWire() };
        balance.Trades.AddRange(BalanceTrade.All(now.Loads, statics.Contacts, target).Select(CarMapping.Trade));
        balance.Cases.AddRange(RaceCases.Of(statics, now, target).Select(RaceMapping.Case));
        balance.ClassStanding = ClassMinimum.Of(statics, now) is { } standing ? RaceMapping.Standing(standing) : null;
        if (request.HasFrontWeightPercent)
            balance.Ballast.AddRange(BallastMove.Ways(statics, now.Loads, BallastGoal.FrontWeight, request.FrontWeightPercent).Select(w => CarMapping.Way(w, "front_weight")));
        if (request.HasLeftSideWeightPercent)
            balance.Ballast.AddRange(BallastMove.Ways(statics, now.Loads, BallastGoal.LeftSideWeight, request.LeftSideWeightPercent).Select(w => CarMapping.Way(w, "left_side_weight")));
        return Task.FromResult(balance);
    }

    public override Task<Wire.CgHeight> ComputeCgHeight(Wire.ComputeCgHeightRequest request, ServerCallContext context)
    {
        var setup = new AxleLiftSetup(asked.Car(request.CarFile).WheelbaseMm, Stated(request.FrontRadiusMm), Stated(request.RearRadiusMm),
            request.FrontLoadKg.ToGiven(), request.RearLoadKg.ToGiven());
        var height = CgHeight.From(setup, [.. request.Lifts.Select(l => Lift(l, setup))]);
        var wire = new Wire.CgHeight { HeightMm = height.HeightMm.ToWire(), Caution = Cautions.AxleLift };
        wire.EachMm.AddRange(height.EachMm);
        return Task.FromResult(wire);
    }

    public static RpcException NoSuchCar(string name) =>
        ApiErrors.NotFound(CarCodes.CarNotFound, $"No car {PlainText.Clean(name, 40)} was saved, or not in that revision.", "List them: scalelink car list.");

    // A mass without a place is no question: the front axle's middle is a place like any other.
    private static Place PlaceOf(Wire.CarPlace? place) => place is null ? new(double.NaN, double.NaN) : new(place.BehindFrontAxleMm, place.LeftOfCentreMm, place.HeightMm);

    private static Stated Stated(Wire.MeasuredValue? q) => new(q.ToGiven());

    private static AxleLift Lift(Wire.AxleLift lift, AxleLiftSetup setup)
    {
        var axle = lift.Lifted switch
        {
            Wire.Axle.Front => Axle.Front,
            Wire.Axle.Rear => Axle.Rear,
            _ => throw ApiErrors.BadRequest(CarCodes.LiftUnusable, "lifts.lifted", "A lift names no axle.", "Name the axle that was raised."),
        };
        return lift.HowCase == Wire.AxleLift.HowOneofCase.LiftMm
            ? AxleLift.ByHeight(axle, lift.OtherAxleLoadKg.ToGiven(), lift.LiftMm.ToGiven(), setup)
            : new AxleLift(axle, lift.OtherAxleLoadKg.ToGiven(), lift.AngleDeg.ToGiven());
    }
}
