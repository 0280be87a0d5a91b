using ScaleLink.Api.V1;
using ScaleLink.Board.Readings;

namespace ScaleLink.Board.Calibration;

/// <summary>Known masses of one kind, as a row of the form.</summary>
public sealed class MassRow
{
    /// <summary>Where limits stand beside the mass instead of a class.</summary>
    public const string PlusMinus = "within kg";

    /// <summary>How a mass can be known: OIML R 111 classes, finest last, or limits.</summary>
    public static IReadOnlyList<string> Ways { get; } = ["M1", "M2", "M3", "F2", "F1", PlusMinus];

    /// <summary>How many, as typed.</summary>
    public string Pieces { get; set; } = "4";

    /// <summary>Of each, as typed.</summary>
    public string Kilograms { get; set; } = "20";

    /// <summary>One of <see cref="Ways"/>.</summary>
    public string KnownBy { get; set; } = Ways[0];

    /// <summary>Either way, kg, as typed; for <see cref="PlusMinus"/> only.</summary>
    public string Limit { get; set; } = "";

    /// <summary>Whether all that is needed has been entered.</summary>
    public bool IsComplete => Count is > 0 and <= 50 && Entry.Number(Kilograms) > 0 && (KnownBy != PlusMinus || Entry.Number(Limit) > 0);

    /// <summary>The masses, each under a label of its own; <paramref name="row"/> tells rows apart.</summary>
    public IEnumerable<KnownMass> Masses(int row) => Enumerable.Range(1, Count).Select(piece =>
    {
        var mass = new KnownMass { Label = $"{Kilograms.Trim()} kg {(char)('A' + row)}{piece}", Kg = Entry.Number(Kilograms)!.Value };
        if (KnownBy == PlusMinus)
            mass.PlusMinus = new PlusMinus { Kg = Entry.Number(Limit)!.Value };
        else
            mass.WeightClass = KnownBy;
        return mass;
    });

    /// <summary>How many; 0 for what is no number.</summary>
    public int Count => (int)(Entry.Number(Pieces) ?? 0);
}
