using System.CommandLine;
using System.Globalization;
using ScaleLink.Api.V1;

namespace ScaleLink.Client.Commands;

/// <summary>Numbers for corners on the command line: "RF 0.5 LR -0.25", or four numbers in the order LF RF LR RR.</summary>
internal static class CornerArguments
{
    private static readonly string[] Names = ["LF", "RF", "LR", "RR"];

    /// <summary>Pairs of corner and number.</summary>
    public static Argument<string[]> Pairs(string description)
    {
        var argument = new Argument<string[]>("turns") { Description = description, Arity = new ArgumentArity(0, 8), HelpName = "CORNER TURNS" };
        argument.Validators.Add(result =>
        {
            if (ReadPairs([.. result.Tokens.Select(t => t.Value)]) is null)
                result.AddError("Give corners and turns in pairs, up positive: RF 0.5 LR -0.25.");
        });
        return argument;
    }

    /// <summary>An option with four numbers.</summary>
    public static Option<double[]> Four(string name, string description)
    {
        var option = new Option<double[]>(name) { Description = description, Arity = new ArgumentArity(4, 4), AllowMultipleArgumentsPerToken = true, HelpName = "LF RF LR RR" };
        return option;
    }

    /// <summary>The four in the base unit; nothing when they are not four.</summary>
    public static CornerNumbers? ReadFour(double[]? four, double factor) =>
        four is [var lf, var rf, var lr, var rr] ? new CornerNumbers { Lf = lf * factor, Rf = rf * factor, Lr = lr * factor, Rr = rr * factor } : null;

    /// <summary>Nothing when the words are no pairs.</summary>
    public static CornerNumbers? ReadPairs(string[] words)
    {
        var numbers = new CornerNumbers();
        if (words.Length % 2 != 0)
            return null;
        for (var i = 0; i < words.Length; i += 2)
        {
            var corner = words[i].ToUpperInvariant();
            if (!Names.Contains(corner) || !double.TryParse(words[i + 1], CultureInfo.InvariantCulture, out var turns) || !double.IsFinite(turns))
                return null;
            _ = corner switch
            {
                "LF" => numbers.Lf = turns,
                "RF" => numbers.Rf = turns,
                "LR" => numbers.Lr = turns,
                _ => numbers.Rr = turns,
            };
        }

        return numbers;
    }
}
