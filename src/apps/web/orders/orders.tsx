import type { Plan } from "../../../core/plan/plan.ts";
import { sayDay } from "../../../core/say/dates.ts";
import { orders } from "../../../core/say/page.ts";
import { count, LOCALE } from "../frame/reader.ts";
import { Empty, Section } from "../frame/section.tsx";
import "./orders.css";

/** Orders to send, the earliest first; lateness is said in words. */
export const Orders = ({ plan }: { plan: Plan }) => (
  <Section id="orders" heading={orders.heading} intro={orders.intro}>
    {plan.orders.length === 0 ? (
      <Empty title={orders.empty} help={orders.emptyHelp} />
    ) : (
      <div className="wide" tabIndex={0} role="group" aria-label={orders.heading}>
        <table>
          <thead>
            <tr>
              <th scope="col">{orders.orderBy}</th>
              <th scope="col">{orders.what}</th>
              <th scope="col">{orders.howMuch}</th>
              <th scope="col">{orders.why}</th>
            </tr>
          </thead>
          <tbody>
            {plan.orders.map((order) => (
              <tr key={`${order.store} ${order.neededBy}`}>
                <td className="orders-day">
                  {order.orderBy === plan.planFrom ? orders.today : sayDay(order.orderBy, LOCALE, "short")}
                  {order.late && <strong className="orders-late">{orders.late}</strong>}
                </td>
                <th scope="row">{order.name}</th>
                <td>
                  {orders.packs(count(order.packs), count(order.quantity).text, order.unit)}{" "}
                  {order.route && orders.by(order.route)}
                </td>
                <td>
                  {order.late
                    ? orders.lateHelp(sayDay(order.neededBy, LOCALE, "tiny"))
                    : orders.needed(sayDay(order.neededBy, LOCALE, "tiny"))}{" "}
                  {order.why}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    )}
  </Section>
);
