using ScaleLink.Client.Cars;
using ScaleLink.Client.Connection;
using ScaleLink.Client.Commands;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Setup;

/// <summary>The last thing that a bay lacks: the car that stands in it. It can wait.</summary>
internal sealed class FirstCar(DaemonConnection daemon, Dialog dialog, Shell shell, string who)
{
    /// <summary>Asks for a file's name, then for the car, and says to the bay that this one stands in it.</summary>
    public async Task Run(CancellationToken stop)
    {
        while (true)
        {
            var path = await dialog.Ask("The car, by questions: name of its file, such as heron.toml (Enter: later, with scalelink car new):", stop);
            if (path.Length == 0)
                return;
            try
            {
                if (new NewCar(shell, () => dialog.Line(stop)).Ask(path) is not ExitCodes.Done)
                    continue;
                foreach (var line in CarPage.InBay(await CarCommand.PutInBay(daemon, InputFile.ReadCar(path), who, stop)))
                    shell.WriteLine(line);
                return;
            }
            catch (ClientException e)
            {
                shell.Error.WriteLine(shell.Glyphs.Tell(e.Diagnostic));
            }
        }
    }
}
