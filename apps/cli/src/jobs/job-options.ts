/** What every job may be told. */
export interface CommonOptions {
  readonly json?: true;
  readonly quiet?: true;
  readonly debug?: true;
}
