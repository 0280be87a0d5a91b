using ScaleLink.Client.Commands;

return await CommandLine.Run(args, Shell.OfThisProcess());
