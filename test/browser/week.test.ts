// One file, so that the weeks are planned once for both.
import "./paper.ts";
import "./screen.ts";
