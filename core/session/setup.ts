export {
  type Engine,
  EngineSchema,
  emptySetup,
  type FluidSystem,
  FluidSystemSchema,
  type Place,
  places,
  type Setup,
  type SetupInput,
  SetupSchema,
  type Targets,
  TargetsSchema,
} from '../injection/index.ts';
