using Grpc.Core.Interceptors;
using Grpc.Net.Client;
using Grpc.Net.Client.Web;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using ScaleLink.Api.V1;
using ScaleLink.Board;
using ScaleLink.Board.Age;
using ScaleLink.Board.Cars;
using ScaleLink.Board.Connection;
using ScaleLink.Board.Device;
using ScaleLink.Board.Operating;
using ScaleLink.Board.PadInterchange;
using ScaleLink.Board.Readings;
using ScaleLink.Board.WorkSessions;

var builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<App>("#app");
builder.RootComponents.Add<HeadOutlet>("head::after");

// The daemon that served this page is the daemon that it shows.
var channel = GrpcChannel.ForAddress(builder.HostEnvironment.BaseAddress, new GrpcChannelOptions
{
    HttpHandler = new GrpcWebHandler(GrpcWebMode.GrpcWeb, new HttpClientHandler()),
});
var control = channel.Intercept(new StepAnswers(TimeProvider.System));
builder.Services.AddSingleton(TimeProvider.System);
builder.Services.AddSingleton(new Feed.FeedClient(channel));
builder.Services.AddSingleton(new PadControl.PadControlClient(control));
builder.Services.AddSingleton(new WorkSessions.WorkSessionsClient(channel));
builder.Services.AddSingleton(new WorkSessionControl.WorkSessionControlClient(control));
builder.Services.AddSingleton(new Cars.CarsClient(channel));
builder.Services.AddSingleton(new CarControl.CarControlClient(control));
builder.Services.AddSingleton(new SetupSheets.SetupSheetsClient(channel));
builder.Services.AddSingleton(new SetupSheetControl.SetupSheetControlClient(control));
builder.Services.AddSingleton(new Patch.PatchClient(channel));
builder.Services.AddSingleton(new PatchControl.PatchControlClient(control));
builder.Services.AddSingleton(new InclinometerZeros.InclinometerZerosClient(channel));
builder.Services.AddSingleton(new InclinometerZeroControl.InclinometerZeroControlClient(control));
builder.Services.AddSingleton(new SiteChecks.SiteChecksClient(channel));
builder.Services.AddSingleton(new SiteCheckControl.SiteCheckControlClient(control));
builder.Services.AddSingleton(new CalibrationProcedures.CalibrationProceduresClient(channel));
builder.Services.AddSingleton(new CalibrationProcedureControl.CalibrationProcedureControlClient(control));
builder.Services.AddSingleton(new PadInterchanges.PadInterchangesClient(channel));
builder.Services.AddSingleton(new PadInterchangeControl.PadInterchangeControlClient(control));
builder.Services.AddSingleton(new Setup.SetupClient(channel));
builder.Services.AddSingleton(new SetupControl.SetupControlClient(channel));
builder.Services.AddTransient<Asking>();
builder.Services.AddTransient<InterchangeSteps>();
builder.Services.AddSingleton<CarDraft>();
builder.Services.AddSingleton<FirstRun>();
builder.Services.AddSingleton<SessionSteps>();
builder.Services.AddSingleton<BayFeed>();
builder.Services.AddSingleton<Heartbeat>();
builder.Services.AddSingleton<SettleTrace>();
builder.Services.AddSingleton<DeviceSettings>();
builder.Services.AddSingleton<SettledSignal>();
builder.Services.AddSingleton<HandsFree>();

var host = builder.Build();
host.Services.GetRequiredService<DeviceSettings>().Load();
host.Services.GetRequiredService<SettledSignal>().Start();
host.Services.GetRequiredService<HandsFree>().Start();
var feed = host.Services.GetRequiredService<BayFeed>();
// The timestamp comes first: no value may look younger than it is.
var asked = TimeProvider.System.GetTimestamp();
feed.Start(LearnedClock.Read(Browser.Clock()), asked);
// What the daemon has drawn stands until there is something to take its place.
await Task.WhenAny(feed.Begun, Task.Delay(TimeSpan.FromSeconds(1), TimeProvider.System));
await host.RunAsync();
