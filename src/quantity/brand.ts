declare const unit: unique symbol;

/**
 * A number that carries its unit in its type and nowhere else: arithmetic gives a plain number back,
 * so a result has to be named again before it can be passed on as a quantity.
 */
export type Quantity<Unit extends string> = number & { readonly [unit]: Unit };
