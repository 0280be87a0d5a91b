using System.Text.Json;
using ScaleLink.Weighing.Balance;
using ScaleLink.Weighing.Cars;
using ScaleLink.Weighing.Cars.Files;
using ScaleLink.Weighing.Documents;
using ScaleLink.Weighing.Statics;

namespace ScaleLink.Weighing.Questions;

/// <summary>Questions as a JSON document. Schema: docs/whatif.schema.json.</summary>
/// <param name="Questions">Null when the document cannot be used.</param>
/// <param name="Mistakes">All of them, each with place and line.</param>
sealed record WhatIfFile(WhatIfQuestions? Questions, IReadOnlyList<Diagnostic> Mistakes)
{
    /// <summary>Reads a document.</summary>
    /// <param name="text">JSON.</param>
    /// <param name="open">Gives the text of a car file that the document names; null when there is none of that name.</param>
    public static WhatIfFile Read(string text, Func<string, string?> open)
    {
        var notes = new DocumentNotes(text);
        if (JsonBlock.Open(text, notes) is not { } root)
            return new(null, notes.Found);
        root.Text("$schema");
        root.Text("note");
        var car = Car(root, notes, open);
        var loads = Loads(root);
        var heights = root.Four("ride_heights_mm");
        var bars = root.Flag("bars_connected");
        var (turns, pads, masses) = (root.Four("turns"), root.Four("pads_raised_mm"), Masses(root, "masses"));
        var plan = root.Block("plan");
        var ballast = root.Block("ballast");
        var (front, left) = (ballast?.Number("front_weight_percent"), ballast?.Number("left_side_weight_percent"));
        ballast?.Finish();
        var repeatability = plan?.Number("settle_repeatability_percent") ?? 0.1;
        plan?.Finish();
        var classOf = Class(root.Block("class"));
        var lifts = car is null ? null : LiftReader.Read(root.Block("axle_lifts"), car, loads);
        root.Raw("axle_lifts");
        root.Finish();
        if (car is null || loads is null || notes.Found.Count > 0)
            return new(null, notes.Found);
        return new(new()
        {
            Car = bars is { } connected ? car.WithBars(connected) : car,
            Loads = loads,
            RideHeightsMm = heights,
            Change = turns is null && pads is null && masses.Count == 0 ? null : new() { Turns = turns ?? default, PadsRaisedMm = pads ?? default, Masses = masses },
            PlanWithRepeatabilityPercent = plan is null ? null : repeatability,
            FrontWeightPercent = front,
            LeftSideWeightPercent = left,
            Class = classOf,
            Lifts = lifts,
        }, []);
    }

    static CarModel? Car(JsonBlock root, DocumentNotes notes, Func<string, string?> open)
    {
        if (root.Raw("car") is not { } car)
        {
            root.Missing("car", "\"heron.json\", or the car itself in braces");
            return null;
        }

        if (car.ValueKind != JsonValueKind.String)
            return root.Block("car") is { } block ? CarFile.Read(block, notes) : null;
        var name = car.GetString()!;
        if (open(name) is not { } text)
        {
            root.Note(CarCodes.MissingField, "car", $"There is no car file {name}.", "Name one beside this file, or put the car itself here.");
            return null;
        }

        var file = CarFile.Read(text);
        foreach (var mistake in file.Mistakes)
            root.Note(mistake.Code, "car", $"{name}{(mistake.Line is { } line ? $":{line}" : "")}: {mistake.Message}", mistake.Remedy);
        return file.Car;
    }

    static LoadSummary? Loads(JsonBlock root)
    {
        if (root.Block("loads_kg") is not { } block)
        {
            if (!root.Has("loads_kg"))
                root.Missing("loads_kg", "{ \"LF\": 268, \"RF\": 288, \"LR\": 257, \"RR\": 235, \"u\": 0.3 }");
            return null;
        }

        foreach (var key in Corners.All.ToArray().Select(c => $"{c}").Append("u").Where(k => !block.Has(k)))
            block.Missing(key, key == "u" ? "0.3 (one standard uncertainty of a load)" : "260");
        var (lf, rf, lr, rr, u) = (block.Number("LF"), block.Number("RF"), block.Number("LR"), block.Number("RR"), block.Number("u"));
        block.Finish();
        if (lf is not { } a || rf is not { } b || lr is not { } c || rr is not { } d || u is not >= 0)
            return null;
        try
        {
            return new(new(a, b, c, d), CornerMatrix.Diagonal(Corners.Same(u.Value * u.Value)));
        }
        catch (DiagnosticException e)
        {
            foreach (var finding in e.Diagnostics)
                root.Note(finding.Code, "loads_kg", finding.Message, finding.Remedy);
            return null;
        }
    }

    static (double, double, IReadOnlyList<LoadCase>)? Class(JsonBlock? block)
    {
        if (block is null)
            return null;
        if (!block.Has("minimum_kg"))
            block.Missing("minimum_kg", "1040");
        var (minimum, margin) = (block.Number("minimum_kg"), block.Number("margin_kg") ?? 0);
        var cases = block.List("states").Select(state =>
        {
            var made = new LoadCase(state.Name("name") ?? "", Masses(state, "changes"));
            state.Finish();
            return made;
        }).ToList();
        block.Finish();
        return minimum is { } kg ? (kg, margin, cases) : null;
    }

    static IReadOnlyList<MassChange> Masses(JsonBlock block, string key) =>
    [
        .. block.List(key).Select(mass =>
        {
            if (!mass.Has("kg"))
                mass.Missing("kg", "10 (negative: taken out)");
            var change = new MassChange(mass.Name("name") ?? "", mass.Number("kg") ?? 0, mass.Place());
            mass.Finish();
            return change;
        }),
    ];
}
