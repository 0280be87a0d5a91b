using System.CommandLine;
using ScaleLink.Client.Runtime;

namespace ScaleLink.Client.Commands;

/// <summary>The name beside everything that goes on record. Given once, it is remembered.</summary>
internal static class WhoOption
{
    public const string Name = "--who";

    public static Option<string> Create(Shell shell) =>
        new(Name) { Description = "Name for the ledger; remembered for the next commands.", DefaultValueFactory = _ => shell.Memory?.Read().Who ?? Environment.UserName, HelpName = "NAME" };
}
