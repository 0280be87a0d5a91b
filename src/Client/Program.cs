using ScaleLink.Client;
using ScaleLink.Client.Runtime;

return await CommandLine.Run(args, Shell.OfThisProcess());
