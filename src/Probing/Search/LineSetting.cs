using System.Globalization;
using System.IO.Ports;
using ScaleLink.Probing.Ports;

namespace ScaleLink.Probing.Search;

/// <summary>A rate and a format at which a line is tried.</summary>
internal sealed record LineSetting(int Baud, CharacterFormat Format)
{
    // The most usual ones first; a wrong rate garbles everything, so the first that makes sense is right.
    private static readonly int[] Spoken = [115200, 9600, 19200, 38400, 57600, 230400, 460800, 921600, 4800, 2400, 1200];

    // 9600 and 19200 are what MODBUS over Serial Line V1.02 asks of every device; even parity is its default, none what most devices come with.
    private static readonly int[] Asked = [9600, 19200, 115200, 38400, 57600, 4800, 2400, 1200, 230400];
    private static readonly Parity[] Parities = [Parity.None, Parity.Even, Parity.Odd];

    /// <summary>Where to listen, in this order: all rates without a parity bit, then with one.</summary>
    public static IReadOnlyList<LineSetting> ToListen(SearchSettings settings, bool hasRates) => !hasRates
        ? [new LineSetting(Spoken[0], new CharacterFormat(settings.Parity ?? Parity.None))]
        : [.. from parity in Of(settings.Parity) from baud in Of(settings.Baud, Spoken) select new LineSetting(baud, new CharacterFormat(parity))];

    /// <summary>Where to ask, in this order: each rate with every parity.</summary>
    public static IReadOnlyList<LineSetting> ToAsk(SearchSettings settings, bool hasRates) => !hasRates
        ? [new LineSetting(Spoken[0], new CharacterFormat(settings.Parity ?? Parity.None))]
        : [.. from baud in Of(settings.Baud, Asked) from parity in Of(settings.Parity) select new LineSetting(baud, new CharacterFormat(parity))];

    /// <summary>For people, such as <c>9600 even</c>.</summary>
    public string Words => string.Create(CultureInfo.InvariantCulture, $"{Baud} {Format.Parity.ToString().ToLowerInvariant()}");

    private static Parity[] Of(Parity? one) => one is { } parity ? [parity] : Parities;

    private static int[] Of(int? one, int[] usual) => one is { } baud ? [baud] : usual;
}
