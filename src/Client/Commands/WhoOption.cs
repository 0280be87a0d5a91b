using System.CommandLine;

namespace ScaleLink.Client.Commands;

/// <summary>The name beside everything that goes on record.</summary>
internal static class WhoOption
{
    public static Option<string> Create() =>
        new("--who") { Description = "Name for the ledger.", DefaultValueFactory = _ => Environment.UserName, HelpName = "NAME" };
}
