using System.Globalization;
using ScaleLink.Api.V1;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Setup;

/// <summary>Asks what no device says, and has the bay file written.</summary>
internal sealed class FileGuide(DaemonConnection daemon, Dialog dialog, Shell shell, string who)
{
    private const string UsualName = "bay1";

    /// <summary>Runs until it is written.</summary>
    public async Task Run(CancellationToken stop)
    {
        while (true)
        {
            var request = new WriteBayFileRequest { Who = who };
            var name = await dialog.Ask($"Name of the bay, letters and digits, - and _ (Enter: {UsualName}):", stop);
            request.Bay = name.Length > 0 ? name : UsualName;
            var state = await SetupFeed.Now(daemon, stop);
            if (state?.Devices.Any(d => d.Corner != Corner.Unspecified && !d.KnowsCapacity) == true)
                request.CapacityKg = await Capacity(stop);
            try
            {
                var written = await daemon.Ask(o => daemon.SetupControl.WriteBayFileAsync(request, o), stop);
                shell.WriteLine($"Written: {PeerText.Clean(written.BayFile, 200)}");
                return;
            }
            catch (ClientException e)
            {
                shell.WriteLine($"{e.Diagnostic}");
            }
        }
    }

    private async Task<double> Capacity(CancellationToken stop)
    {
        while (true)
        {
            var said = await dialog.Ask($"What one pad may carry, as its plate says: 600 kg, or 1500 lb; {shell.Glyphs.MassSign()} where nothing stands behind the number. Its load cells' capacity where there is no plate:", stop);
            var unit = new[] { Measure.Unit.Kilogram, Measure.Unit.Pound }.FirstOrDefault(u => said.EndsWith(u.Sign, StringComparison.OrdinalIgnoreCase));
            var number = unit is null ? said : said[..^unit.Sign.Length];
            if (double.TryParse(number.Trim(), NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && value > 0)
                return value * (unit ?? shell.Glyphs.Units.Mass).Factor;
            shell.WriteLine($"  \"{PeerText.Clean(said, 40)}\" is no load. Write it like 600 kg.");
        }
    }
}
