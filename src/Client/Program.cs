using ScaleLink.Client.Commands;
using ScaleLink.Client.Runtime;

return await CommandLine.Run(args, Shell.OfThisProcess());
