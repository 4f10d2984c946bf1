import type { BenchAnswer, BenchRequest } from "./bench/bench.ts";
import type { HeightsAnswer, HeightsRequest } from "./bench/heights.ts";
import type { LeadsAnswer, LeadsRequest } from "./bench/leads.ts";
import type { PassportAnswer, PassportRequest } from "./bench/passport.ts";
import type { RoomAnswer, RoomRequest, RoomTemplateRequest } from "./bench/room.ts";
import type { SwapCardAnswer, SwapCardRequest } from "./bench/swap-card.ts";
import type { SwitchAnswer, SwitchRequest } from "./bench/switch-finder.ts";
import type { BuildableAnswer, BuildableRequest } from "./buildable.ts";
import type { CatalogueAnswer } from "./catalogue.ts";
import type { CompareAnswer, CompareRequest } from "./compare.ts";
import type { DiagnoseAnswer, DiagnoseRequest } from "./diagnose.ts";
import type { DielectricsAnswer, DielectricsRequest } from "./dielectrics.ts";
import type { ExamineAnswer } from "./examine/examine-answer.ts";
import type { ExamineRequest } from "./examine/examine-request.ts";
import type { ExpandAnswer, ExpandRequest } from "./expand.ts";
import type { FitAnswer, FitRequest } from "./fit.ts";
import type { HeardChangeAnswer, HeardChangeRequest } from "./heard-change.ts";
import type { LinkAnswer, LinkContent, LinkRequest } from "./link.ts";
import type { TapsAnswer, TapsRequest } from "./measure/taps.ts";
import type { NoiseAnswer, NoiseRequest } from "./noise.ts";
import type { PreviewRequest } from "./preview.ts";
import type { PreviewsRequest } from "./previews.ts";
import type { RecogniseAnswer, RecogniseRequest } from "./recognise.ts";
import type { ResponseAnswer, ResponseRequest } from "./response.ts";
import type { RewireAnswer, RewireRequest } from "./rewire.ts";
import type { ScenarioAnswer, ScenariosAnswer } from "./scenarios.ts";
import type { SearchAnswer, SearchRequest } from "./search.ts";
import type { ShelfLinkAnswer, ShelfLinkContent, ShelfLinkRequest } from "./shelf-link.ts";
import type { SignalsAnswer } from "./signals.ts";
import type { TableAnswer, TableRequest } from "./table.ts";
import type { ToleranceAnswer, ToleranceRequest } from "./tolerance.ts";
import type { WantedAnswer, WantedRequest } from "./wanted.ts";
import type { WishesAnswer, WishesRequest } from "./wishes.ts";

interface Call<Request, Answer> {
  readonly request: Request;
  readonly answer: Answer;
}

/** What is sent to each POST call that answers JSON, and what comes back. */
export interface PostCalls {
  readonly "/api/bench": Call<BenchRequest, BenchAnswer>;
  readonly "/api/buildable": Call<BuildableRequest, BuildableAnswer>;
  readonly "/api/compare": Call<CompareRequest, CompareAnswer>;
  readonly "/api/diagnose": Call<DiagnoseRequest, DiagnoseAnswer>;
  readonly "/api/dielectrics": Call<DielectricsRequest, DielectricsAnswer>;
  readonly "/api/examine": Call<ExamineRequest, ExamineAnswer>;
  readonly "/api/expand": Call<ExpandRequest, ExpandAnswer>;
  readonly "/api/fit": Call<FitRequest, FitAnswer>;
  readonly "/api/leads": Call<LeadsRequest, LeadsAnswer>;
  readonly "/api/heard-change": Call<HeardChangeRequest, HeardChangeAnswer>;
  readonly "/api/heights": Call<HeightsRequest, HeightsAnswer>;
  readonly "/api/link": Call<LinkRequest, LinkAnswer>;
  readonly "/api/noise": Call<NoiseRequest, NoiseAnswer>;
  readonly "/api/passport": Call<PassportRequest, PassportAnswer>;
  readonly "/api/recognise": Call<RecogniseRequest, RecogniseAnswer>;
  readonly "/api/response": Call<ResponseRequest, ResponseAnswer>;
  readonly "/api/rewire": Call<RewireRequest, RewireAnswer>;
  readonly "/api/room": Call<RoomRequest, RoomAnswer>;
  readonly "/api/search": Call<SearchRequest, SearchAnswer>;
  readonly "/api/swap-card": Call<SwapCardRequest, SwapCardAnswer>;
  readonly "/api/shelf-link": Call<ShelfLinkRequest, ShelfLinkAnswer>;
  readonly "/api/switch": Call<SwitchRequest, SwitchAnswer>;
  readonly "/api/table": Call<TableRequest, TableAnswer>;
  readonly "/api/taps": Call<TapsRequest, TapsAnswer>;
  readonly "/api/tolerance": Call<ToleranceRequest, ToleranceAnswer>;
  readonly "/api/wanted": Call<WantedRequest, WantedAnswer>;
  readonly "/api/wishes": Call<WishesRequest, WishesAnswer>;
}

/** What is sent to each POST call that answers a file. */
export interface FileCalls {
  readonly "/api/preview": PreviewRequest;
  readonly "/api/previews": PreviewsRequest;
  readonly "/api/passport": PassportRequest;
  readonly "/api/room/template": RoomTemplateRequest;
  readonly "/api/table": TableRequest;
}

/** What each GET call that answers JSON answers. */
export interface GetCalls {
  readonly "/api/catalogue": CatalogueAnswer;
  readonly [link: `/api/link/${string}`]: LinkContent;
  readonly "/api/scenarios": ScenariosAnswer;
  readonly [scenario: `/api/scenarios/${string}`]: ScenarioAnswer;
  readonly [shelf: `/api/shelf-link/${string}`]: ShelfLinkContent;
  readonly "/api/signals": SignalsAnswer;
}
