/** Property tests draw the same cases in every run, so that a red run can be repeated; a test may still state its own seed. */
import fc from 'fast-check';

fc.configureGlobal({ ...fc.readConfigureGlobal(), seed: 20_261_125 });
