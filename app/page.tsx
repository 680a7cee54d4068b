export default function FrontDoor() {
  return <h1>Halftime</h1>;
}
