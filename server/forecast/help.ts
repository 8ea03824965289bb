export const HELP = `Forecasts from a till's sales, to check this shop's forecasts on open data. Goes forward day by day: what is said of a
day rests on the days before it and, with an hour, on that day's sales before it. Never on anything later.

  npm run -s forecast -- days --sales FILE... --items FILE --from DATE --to DATE [--asof HH:MM]...
      date,item,q10,q50,q80,q90[,asof]    pieces that will be sold on each open day of the window, both ends included.
      With --asof these rows come besides: pieces sold from that minute to close.
  npm run -s forecast -- soldout --sales FILE... --soldout FILE --mechanism A|B
      mechanism,date,item,est_demand      pieces that would have been sold, of each item's day that the file lists.
  npm run -s forecast -- runout --sales FILE... --cases FILE
      date,item,asof,stock,t10,t50,t90    gone by then with 10, 50, 90 % chance; empty: not before close.

--sales    ts,txn,item,qty; may stand several times or name several files, plain or .gz. Days with a sale are the open days.
--items    a column item; where there is a column evaluated, items with 1. One never sold before is forecast as 0.
--soldout  mechanism,date,item,sold_out_at; sold_out_at is empty where it did not sell out.
--cases    date,item,asof,stock; close, where there is such a column, is when the shop closes. Other columns are not read.

A till does not say when a shop opens and closes: the medians of first and last sale of the weekday's days before are taken,
to the quarter of an hour. Data goes to standard output, what is wrong to standard error with file and line, and then the
exit status is 1 (2 when the command itself cannot be read).
`
