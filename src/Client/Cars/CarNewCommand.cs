using System.CommandLine;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Cars;

/// <summary><c>scalelink car new</c>: asks for what is needed and writes a car file.</summary>
internal static class CarNewCommand
{
    public static Command Create(Shell shell)
    {
        var file = new Argument<string>("file") { Description = "Where to write it. An existing file is not touched.", HelpName = "FILE" };
        var command = new Command("new", "Asks for a car's measures and rates, and writes its file. An empty answer: nobody knows; a wide guess stands in. Left early, it goes on there the next time.") { file };
        command.SetAction(parsed => new NewCar(shell, shell.In.ReadLine).Ask(parsed.GetValue(file)!));
        return command;
    }
}
